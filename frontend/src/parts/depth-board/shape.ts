import type { Expectation } from '@/api/shapes'
import { sizeOf } from '@/parts/final-size'
import { mm } from '@/units/millimetres'
import { words } from '@/words/en'

/** A width at a depth, in millimetres from the reference point. */
export interface Width {
  readonly from_reference_mm: number
  readonly diameter_mm: number
}

/** An instrument as it is drawn, from its tip upwards. */
export type Silhouette = readonly { readonly from_tip_mm: number; readonly diameter_mm: number }[]

/** The readings that a length comes from. */
interface Taken {
  readonly state: string
  readonly rests_on: readonly string[]
  readonly readings: readonly {
    readonly method: string
    readonly counts: boolean
    readonly working_length_mm: number | null
  }[]
}

/** The shortest and the longest of the readings that disagree [mm]; none where they agree. */
export function disagreeing({ state, rests_on, readings }: Taken): number[] {
  if (state !== 'to_settle' && state !== 'unsettled') return []
  const latest = new Map(readings.flatMap((r) => (r.counts && r.working_length_mm !== null ? [[r.method, r]] : [])))
  const measured = [...latest.values()].filter(({ method }) => rests_on.includes(method))
  // One measurement alone can only disagree with its estimate.
  const lengths = (measured.length > 1 ? measured : [...latest.values()]).map((r) => r.working_length_mm ?? 0)
  const ends = [Math.min(...lengths), Math.max(...lengths)]
  return lengths.length > 1 && ends[0] !== ends[1] ? ends : []
}

/** A length as it is written under its canal: an estimate is one, readings that disagree are both there. */
export function lengthsOf(length_mm: number, of: Taken | null, sure: boolean): string[] {
  const apart = of ? disagreeing(of) : []
  if (apart.length > 0) return apart.map((each, i) => (i === 0 ? mm(each) : `≠ ${mm(each)}`))
  return [sure ? mm(length_mm) : `≈ ${mm(length_mm)}`]
}

/** What the board draws of a canal: a part of the plan's canal, in millimetres from the reference point. */
export interface BoardCanal {
  readonly canal: string
  readonly reference_point: string
  readonly end_mm: number | null
  readonly junction_mm: number | null
  readonly joins: string | null
  readonly provisional: boolean
  readonly final_size: number | null
  readonly final_taper: number
  readonly length: Taken & {
    readonly working_length_mm: number | null
    /** Between what the tooth ends, as its image was marked; older plans have none. */
    readonly estimated?: { readonly least_mm: number; readonly most_mm: number } | null
  }
  readonly outline: readonly Width[]
  /** What is expected step by step; none before there is a length. */
  readonly expectation: Expectation | null
  readonly withheld: readonly { readonly says: string }[]
}

/** The deepest stop of the coronal instruments in one canal. */
export interface CoronalStop {
  readonly canal: string
  readonly stop_mm: number
}

interface StopLike {
  readonly canal: string
  readonly stop_mm: number
  readonly target: string
  /** What kind of stop it is; older plans do not say. */
  readonly why: string
}

interface StopRowLike {
  readonly stops: readonly StopLike[]
}

function isCoronal({ why, target, stop_mm }: StopLike, end_mm: number | null): boolean {
  if (why) return why === 'stops.coronal'
  return target === 'to_resistance' && end_mm !== null && stop_mm < end_mm
}

/** The coronal instruments' own stops: to resistance, and short of where the canal's shaping ends. */
export function coronalStops(canals: readonly BoardCanal[], rows: readonly StopRowLike[]): CoronalStop[] {
  return canals.flatMap(({ canal, end_mm }) => {
    const depths = rows
      .flatMap((row) => row.stops)
      .filter((s) => s.canal === canal && isCoronal(s, end_mm))
      .map((s) => s.stop_mm)
    return depths.length ? [{ canal, stop_mm: Math.max(...depths) }] : []
  })
}

/** The board in sentences, one a canal. */
export function describe(
  canals: readonly BoardCanal[],
  coronal: readonly CoronalStop[],
  before: readonly BoardCanal[] | undefined,
): string {
  return canals
    .map((canal) => {
      const stop = coronal.find((c) => c.canal === canal.canal)
      const old = before?.find((b) => b.canal === canal.canal)
      return words.board.sentence({
        canal: canal.canal,
        reference: canal.reference_point,
        end: canal.end_mm === null ? undefined : mm(canal.end_mm),
        estimate: canal.provisional,
        joins: canal.junction_mm === null ? undefined : (canal.joins ?? undefined),
        finalSize: canal.final_size === null ? undefined : sizeOf(canal),
        coronal: stop && mm(stop.stop_mm),
        was: old?.end_mm != null && old.end_mm !== canal.end_mm ? mm(old.end_mm) : undefined,
        withheld: canal.withheld.map((w) => w.says),
      })
    })
    .join(' ')
}
