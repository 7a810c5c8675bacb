import type { CanalPlan, Plan } from '@/api/shapes'
import { mm } from '@/parts/millimetres'
import { words } from '@/words/en'

export interface Change {
  /** The canal it concerns; none for what concerns the whole tooth. */
  readonly canal: string | null
  readonly what: string
  readonly from: string
  readonly to: string
}

/** What differs between two plans of one tooth, the whole tooth first, then canal by canal. Compares, computes nothing. */
export function compare(before: Plan, after: Plan): Change[] {
  return [...wholeTooth(before, after), ...after.canals.flatMap((canal) => ofCanal(before, after, canal))]
}

function wholeTooth(before: Plan, after: Plan): Change[] {
  const d = words.difference
  return changed(null, [
    [d.technique, words.phase(before.technique), words.phase(after.technique)],
    [d.kit, before.kit, after.kit],
    [d.irrigant, words.irrigant(before.irrigant), words.irrigant(after.irrigant)],
    [d.instruments, layOut(before), layOut(after)],
    [d.trayChanges, String(before.tray.changes), String(after.tray.changes)],
    [d.cautions, cautionsOf(before, null), cautionsOf(after, null)],
  ])
}

const layOut = (plan: Plan) => plan.tray_list.map((item) => item.instrument.name).join(' ')

function ofCanal(before: Plan, after: Plan, canal: CanalPlan): Change[] {
  const d = words.difference
  const old = before.canals.find((c) => c.canal === canal.canal)
  if (!old) return [{ canal: canal.canal, what: d.canal, from: d.none, to: d.added }]
  return changed(canal.canal, [
    [d.finalSize, sizeOf(old), sizeOf(canal)],
    [d.end, orNone(old.end_mm), orNone(canal.end_mm)],
    [d.needle, orNone(old.needle?.ceiling_mm ?? null), orNone(canal.needle?.ceiling_mm ?? null)],
    [d.stops, stopsOf(before, canal.canal), stopsOf(after, canal.canal)],
    [d.cautions, cautionsOf(before, canal.canal), cautionsOf(after, canal.canal)],
    [d.withheld, withheldOf(old), withheldOf(canal)],
  ])
}

function changed(canal: string | null, pairs: readonly (readonly [string, string, string])[]): Change[] {
  return pairs.filter(([, from, to]) => from !== to).map(([what, from, to]) => ({ canal, what, from, to }))
}

export const sizeOf = (c: Pick<CanalPlan, 'final_size' | 'final_taper'>): string =>
  `${c.final_size}/.${String(c.final_taper).padStart(2, '0')}`

const orNone = (length_mm: number | null) => (length_mm === null ? words.difference.none : mm(length_mm))

const withheldOf = (c: CanalPlan) =>
  c.withheld.map((w) => words.phase(w.from_phase)).join(', ') || words.difference.none

const cautionsOf = (plan: Plan, canal: string | null) =>
  plan.cautions
    .filter((c) => c.canal === canal && c.severity !== 'note')
    .map((c) => c.says)
    .join(' ') || words.difference.none

/** The instruments of a canal with their stops, written once where neighbours share one. */
function stopsOf(plan: Plan, canal: string): string {
  const parts: { names: string[]; stop: string }[] = []
  for (const row of plan.stop_table) {
    const stop = row.stops.find((s) => s.canal === canal)
    if (!stop) continue
    const last = parts.at(-1)
    if (last?.stop === mm(stop.stop_mm)) last.names.push(row.instrument.name)
    else parts.push({ names: [row.instrument.name], stop: mm(stop.stop_mm) })
  }
  return parts.map((p) => `${p.names.join(' ')} at ${p.stop}`).join('; ') || words.difference.none
}
