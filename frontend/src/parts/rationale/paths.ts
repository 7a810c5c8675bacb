import type { Calculation, CanalPlan, Rationale } from '@/api/shapes'

/** Where in a canal's plan a number stands, as its reasons name it. */

export const depthPath = (index: number): string => `expectation.steps.${index}.depth_mm`

export const bandPath = (index: number): string => `expectation.steps.${index}.low_mm`

export const needlePath = (index: number): string => `needle.now.${index}.at_most_mm`

type Ends = Pick<CanalPlan, 'end_mm'> & { readonly length: Pick<CanalPlan['length'], 'stop_mm'> }

/** The kind of a stop: at the working length, at the end of shaping, or the coronal instruments' own. */
export function stopPath({ end_mm, length }: Ends, stop_mm: number): string {
  if (stop_mm === length.stop_mm) return 'stops.full'
  return stop_mm === end_mm ? 'stops.end' : 'stops.coronal'
}

type Rows = readonly {
  instrument: { key: string }
  stops: readonly { canal: string; stop_mm: number; why: string }[]
}[]

/** The kind of an instrument's stop as the stop table has it; where it does not say, by where the stop lies. */
export function tabledPath(rows: Rows, canal: Ends & { canal: string }, instrument: string, stop_mm: number): string {
  const stops = rows.filter((row) => row.instrument.key === instrument).flatMap((row) => row.stops)
  const tabled = stops.find((stop) => stop.canal === canal.canal && stop.stop_mm === stop_mm)
  return tabled?.why || stopPath(canal, stop_mm)
}

/**
 * The paths under which a number's reason may be given, nearest first: its own, the same for every place of a list,
 * then what it is part of.
 */
export function pathsOf(path: string): string[] {
  const parts = path.split('.')
  const up = parts.map((_, i) => parts.slice(0, parts.length - i).join('.'))
  return [...new Set(up.flatMap((path) => [path, path.replace(/\.\d+/g, '')]))]
}

/** Of a rationale the one line of arithmetic that gives the number at a path: by its place in a list, else by itself. */
function lineOf({ calculations, of }: Rationale, path: string, value: string): Calculation | undefined {
  const place = /\.\d/.test(of) ? undefined : path.match(/\.(\d+)/)?.[1]
  if (place !== undefined && calculations.length > 1) return calculations[Number(place)]
  const same = calculations.find(({ result }) => result === Number.parseFloat(value))
  return same ?? (calculations.length === 1 ? calculations[0] : undefined)
}

export interface Reasoned {
  readonly rationale: Rationale
  /** How it was worked out; nothing where it was chosen, or searched for. */
  readonly line: Calculation | undefined
}

/** Why the number at a path is what it is; nothing where the plan does not say. */
export function reasonOf(rationales: readonly Rationale[], path: string, value: string): Reasoned | undefined {
  const of = pathsOf(path).find((each) => rationales.some((rationale) => rationale.of === each))
  const rationale = rationales.find((each) => each.of === of)
  return rationale && { rationale, line: lineOf(rationale, path, value) }
}
