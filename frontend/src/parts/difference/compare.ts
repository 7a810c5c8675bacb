import type { CanalPlan, Plan } from '@/api/shapes'
import { sizeOf } from '@/parts/final-size'
import { mm } from '@/units/millimetres'
import { words } from '@/words/en'

export interface Change {
  /** The canal it concerns; none for what concerns the whole tooth. */
  readonly canal: string | null
  readonly what: string
  readonly from: string
  readonly to: string
}

/**
 * What differs between two plans of one tooth, canal by canal with the most dangerous first (where something stops), then
 * of the whole tooth. Compares, computes nothing.
 */
export function compare(before: Plan, after: Plan): Change[] {
  return [...after.canals.flatMap((canal) => ofCanal(before, after, canal)), ...wholeTooth(before, after)]
}

/** What an instrument is set to, canal by canal: where the canal ends, and every rubber stop. */
export function stopChanges(before: Plan, after: Plan): Change[] {
  return after.canals.flatMap(({ canal, end_mm }) => {
    const old = before.canals.find((c) => c.canal === canal)
    const end = [words.difference.end, orNone(old?.end_mm ?? null), orNone(end_mm)] as const
    return changed(canal, [end, ...stops(before, after, canal)])
  })
}

function wholeTooth(before: Plan, after: Plan): Change[] {
  const d = words.difference
  return changed(null, [
    [d.cautions, cautionsOf(before, null), cautionsOf(after, null)],
    [d.irrigant, words.irrigant(before.irrigant), words.irrigant(after.irrigant)],
    [d.technique, words.phase(before.technique), words.phase(after.technique)],
    [d.kit, before.kit, after.kit],
    [d.instruments, missing(before, after), missing(after, before)],
    [d.trayChanges, String(before.tray.changes), String(after.tray.changes)],
  ])
}

/** What one plan lays out and the other does not. */
function missing(here: Plan, there: Plan): string {
  const others = new Set(there.tray_list.map((item) => item.instrument.key))
  const names = here.tray_list.filter((item) => !others.has(item.instrument.key)).map((item) => item.instrument.name)
  return names.join(', ') || words.difference.none
}

function ofCanal(before: Plan, after: Plan, canal: CanalPlan): Change[] {
  const d = words.difference
  const old = before.canals.find((c) => c.canal === canal.canal)
  if (!old) return [{ canal: canal.canal, what: d.canal, from: d.none, to: d.added }]
  return changed(canal.canal, [
    [d.end, orNone(old.end_mm), orNone(canal.end_mm)],
    ...stops(before, after, canal.canal),
    [d.needle, orNone(old.needle?.ceiling_mm ?? null), orNone(canal.needle?.ceiling_mm ?? null)],
    [d.cautions, cautionsOf(before, canal.canal), cautionsOf(after, canal.canal)],
    [d.withheld, withheldOf(old), withheldOf(canal)],
    [d.finalSize, sizeOf(old), sizeOf(canal)],
  ])
}

function changed(canal: string | null, pairs: readonly (readonly [string, string, string])[]): Change[] {
  return pairs.filter(([, from, to]) => from !== to).map(([what, from, to]) => ({ canal, what, from, to }))
}

const orNone = (length_mm: number | null) => (length_mm === null ? words.difference.none : mm(length_mm))

const withheldOf = (c: CanalPlan) =>
  c.withheld.map((w) => words.phase(w.from_phase)).join(', ') || words.difference.none

const cautionsOf = (plan: Plan, canal: string | null) =>
  plan.cautions
    .filter((c) => c.canal === canal && c.severity !== 'note')
    .map((c) => c.says)
    .join(' ') || words.difference.none

/** Each instrument of a canal, phase by phase, with its stop before and now. */
function stops(before: Plan, after: Plan, canal: string): [string, string, string][] {
  const old = stopsOf(before, canal)
  const now = stopsOf(after, canal)
  const { none } = words.difference
  return [...new Set([...old.keys(), ...now.keys()])].map((key) => [key, old.get(key) ?? none, now.get(key) ?? none])
}

function stopsOf(plan: Plan, canal: string): Map<string, string> {
  const stops = plan.stop_table.flatMap(({ instrument, phase, stops: all }) => {
    const stop = all.find((s) => s.canal === canal)
    return stop ? [[words.difference.stop(instrument.name, words.phase(phase)), mm(stop.stop_mm)] as const] : []
  })
  return new Map(stops)
}
