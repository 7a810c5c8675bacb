import type { InstrumentName, Plan, SheetStep } from '@/api/shapes'
import type { Chair } from '@/store/chair/chair'
import type { CanalProgress } from '@/walk/course'
import { instrumentsOf, toLookAt } from '@/walk/instruments'

type Advice = NonNullable<Plan['at_the_chair']>['advice'][number]

/** An instrument of the plan by its key. */
export function instrumentOf({ plan }: Chair, key: string | null): InstrumentName | undefined {
  return plan.tray_list.find((item) => item.instrument.key === key)?.instrument
}

export function nameOf(chair: Chair, key: string): string {
  return instrumentOf(chair, key)?.name ?? key
}

/** All that the plan brings along for what may happen at the chair. */
export function adviceIn({ plan }: Chair): Advice[] {
  const advice = plan.at_the_chair?.advice ?? []
  // What should not happen in this setting and was told all the same has its sentences too.
  return advice.filter((sentence) => isOf(sentence, plan.setting) || !happens(advice, plan.setting, sentence))
}

/** Whether an emergency or a pause can happen in the plan's setting; a plan that does not say leaves all of them. */
export function canHappen({ plan }: Chair, about: Advice['about'], key: string): boolean {
  const advice = plan.at_the_chair?.advice ?? []
  return (
    !advice.some((sentence) => sentence.about === about && sentence.key === key) ||
    happens(advice, plan.setting, { about, key })
  )
}

function happens(advice: readonly Advice[], setting: string, { about, key }: Pick<Advice, 'about' | 'key'>): boolean {
  return advice.some((sentence) => sentence.about === about && sentence.key === key && isOf(sentence, setting))
}

const isOf = ({ settings = [] }: Advice, setting: string) =>
  settings.length === 0 || settings.some((s) => s === setting)

/** What the plan brings along for one emergency, pause, look or discard. */
export function adviceOf(chair: Chair, about: Advice['about'], key?: string): Advice[] {
  return adviceIn(chair).filter((sentence) => sentence.about === about && (key === undefined || sentence.key === key))
}

/** What stands before the answers of a step, the most pressing first; nothing where it can be worked. */
type Before =
  | { readonly what: 'new'; readonly instrument: string; readonly why: string }
  | { readonly what: 'look'; readonly instruments: readonly string[] }
  | { readonly what: 'motor' }

export function beforeStep(chair: Chair, canal: string, { state, walk }: CanalProgress): Before | undefined {
  const { node } = walk
  if (state !== 'open' || node.kind === 'end') return undefined
  const inUse = instrumentsOf(chair.events, chair.course)
  const discarded = node.instrument ? inUse.get(node.instrument)?.discarded : null
  if (node.instrument && discarded != null) return { what: 'new', instrument: node.instrument, why: discarded }
  const instruments = toLookAt(inUse, canal, node)
  if (instruments.length > 0) return { what: 'look', instruments }
  return instrumentOf(chair, node.instrument)?.setting_stated === false ? { what: 'motor' } : undefined
}

/** The instrument that has just come out of the canal; undefined where the step before was none. */
export function justOut({ walk }: CanalProgress): string | undefined {
  const last = walk.left.at(-1)
  const node = last && walk.sheet.nodes[last.node]
  return (node?.kind === 'do' && (node as SheetStep).action === 'instrument' && node.instrument) || undefined
}
