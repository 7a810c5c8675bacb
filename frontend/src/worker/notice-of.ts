import { chair } from '@/words/chair'
import { push } from '@/words/push'

const { news, open } = push

const happenedAs = (what: string): string => chair.emergencies[what] ?? ''

interface Notice {
  readonly title: string
  readonly body: string
  /** A later notice of the same tag takes the place of an earlier one. */
  readonly tag: string
  /** Where in the app it leads. */
  readonly to: string
  readonly urgent: boolean
}

/** What a message of the server says. A browser must show something for each, so what is not understood is told too. */
export function noticeOf(message: unknown): Notice {
  const fields = (typeof message === 'object' && message) || {}
  const text = (name: string) => String((fields as Record<string, unknown>)[name] ?? '')
  const [id, tooth, canal, what] = [text('case_id'), text('tooth'), text('canal'), text('what')]
  const body = [text('alias'), text('hold_point')].filter(Boolean).join(', ')
  const at = `/cases/${encodeURIComponent(id)}`
  const common = { body, tag: `${id} ${canal}`, urgent: false, to: `${at}/sign-off/${encodeURIComponent(canal)}` }
  const ofEmergency = {
    ...common,
    to: `${at}/chair`,
    urgent: true,
    body: [happenedAs(text('happened')), body].filter(Boolean).join(', '),
  }
  if (what === 'emergency') return { ...ofEmergency, title: news.emergency(tooth) }
  if (what === 'corrected') return { ...ofEmergency, title: news.corrected(tooth, text('by')) }
  if (what === 'not_so') return { ...ofEmergency, title: news.notSo(tooth, text('by')) }
  if (what === 'asked') return { ...common, title: news.asked(tooth, canal) }
  if (what === 'hold_point') return { ...common, title: news.hold_point(tooth, canal) }
  return { title: news.other, body: open, tag: 'other', to: '/worklist', urgent: false }
}
