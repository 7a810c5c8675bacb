import { mm } from '@/units/millimetres'
import { plan } from './plan'

const ASKS = {
  first: 'first plan of this case',
  after_return: 'changed after it was returned',
  after_approval: 'changed after it was approved',
}

export const review = {
  worklist: {
    title: 'Waiting for you',
    empty: 'Nothing waits.',
    allCases: 'All cases',
    plans: 'Plans to decide on',
    chairs: 'At the chairs',
    groups: {
      halted: 'Emergency: call or go there',
      waits: 'Waits at the chair',
      going: 'At the chair now',
    },
    takenOver: (who: string) => `${who} has taken over`,
    since: (seconds: number) => {
      const minutes = Math.floor(seconds / 60)
      return minutes < 1 ? 'just begun' : `for ${minutes < 60 ? `${minutes} min` : `${Math.floor(minutes / 60)} h`}`
    },
    outside: (depth: string, low: string, high: string, asIfStraight: boolean) =>
      `stopped at ${depth}, expected ${low} to ${high}${asIfStraight ? ', computed as if straight' : ''}`,
    more: (n: number) => `The ${n} most urgent; there are more.`,
    halted: 'HALTED',
    checkDue: 'closed for today, to be checked',
    waitsFor: (what: string) => `waits: ${what}`,
    plan: (alias: string, number: number) => `${alias} ·\u00a0plan\u00a0${number}`,
    asks: ASKS,
    stale: 'case changed since',
    waits: (seconds: number) => {
      const minutes = Math.floor(seconds / 60)
      if (minutes < 1) return 'just now'
      if (minutes < 60) return `${minutes} min`
      const hours = Math.floor(minutes / 60)
      return hours < 48 ? `${hours} h` : `${Math.floor(hours / 24)} days`
    },
  },
  review: {
    plan: 'Plan',
    title: (iso: string, number: number) => `Tooth ${iso} · plan ${number}`,
    under: (technique: string, setting: string | undefined, against: number | undefined) =>
      [technique, setting?.toLowerCase(), against === undefined ? '' : `against plan ${against}`]
        .filter(Boolean)
        .join(', '),
    facts: (size: string, end_mm: number | null, state: string, methods: readonly string[]) =>
      `${size}${end_mm === null ? '' : ` to ${mm(end_mm)}`}, length ${plan.lengthState(state)}${
        methods.length ? `, rests on ${methods.map(plan.method).join(' and ')}` : ''
      }`,
    by: (student: string) => `by ${student}`,
    stale: 'The case has changed since this plan was made. It cannot be approved; the student plans again.',
    superseded: 'Another version stands in place of this one.',
    replaced: 'replaced',
    remark: (canal: string) => `Remark on ${canal}`,
    note: 'Note on the whole plan',
    return: 'Return',
    approve: (number: number) => `Approve plan ${number}`,
    busy: 'Sending …',
    saySomething: 'Say what to change: a remark on a canal, or a note.',
    unchanged: 'unchanged',
    nothing: (number: number) => `Nothing changed since plan ${number}.`,
    came: 'Not in the version before.',
    went: 'No longer in the plan.',
    cautionCame: 'New:',
    cautionWent: 'Gone:',
    progress: (n: number) => `How far the work had come: ${n} ${n === 1 ? 'thing' : 'things'}`,
    value: (text: string | null, unit: string) =>
      text === null ? 'none' : `${text.replace(/_/g, ' ')}${unit === '°' ? unit : unit && `\u00a0${unit}`}`,
  },
  acknowledge: {
    title: 'Must be put right: tick each you have seen',
    tooth: 'Whole tooth',
    first: (where: readonly string[]) => `Tick first: ${where.join(', ')}`,
    missing: (where: readonly string[]) => `Tick each that must be put right before you approve: ${where.join(', ')}.`,
    answers: 'What was said last',
  },
  revoke: {
    open: 'Withdraw the approval',
    reason: 'Why is the approval withdrawn?',
    hint: 'The student reads it at the chair at once. Work halts at the next step until a plan is approved again.',
    go: 'Withdraw it now',
    keep: 'Let it stand',
    was: (name: string, when: string) => `Approval withdrawn by ${name}, ${when}`,
  },
  letPass: {
    open: 'Let the work go on',
    openWide: 'Choose the final size',
    reason: 'Why the work may go on',
    hint: 'It stands with this caution in the plan and in the record.',
    go: 'Let it pass, with this reason',
    keep: 'Not now',
    by: (name: string, at: string) => `Let pass by ${name}, ${at}.`,
    size: (size: number) => `Final size ${size}.`,
    next: 'This plan was made before that: the student makes it again, and what is withheld opens.',
    back: 'Take it back',
  },
} as const
