import type { Expectation } from '@/api/shapes'

/** A width at a depth, in millimetres from the reference point. */
export interface Width {
  readonly from_reference_mm: number
  readonly diameter_mm: number
}

/** An instrument as it is drawn, from its tip upwards. */
export type Silhouette = readonly { readonly from_tip_mm: number; readonly diameter_mm: number }[]

/** What the board draws of a canal: a part of the plan's canal, in millimetres from the reference point. */
export interface BoardCanal {
  readonly canal: string
  readonly reference_point: string
  readonly end_mm: number | null
  readonly junction_mm: number | null
  readonly joins: string | null
  readonly provisional: boolean
  readonly final_size: number
  readonly final_taper: number
  readonly length: { readonly working_length_mm: number | null }
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

interface StopRowLike {
  readonly stops: readonly { readonly canal: string; readonly stop_mm: number; readonly target: string }[]
}

/** The coronal instruments' own stops: to resistance, and short of where the canal's shaping ends. */
export function coronalStops(canals: readonly BoardCanal[], rows: readonly StopRowLike[]): CoronalStop[] {
  return canals.flatMap(({ canal, end_mm }) => {
    const depths = rows
      .flatMap((row) => row.stops)
      .filter((s) => s.canal === canal && s.target === 'to_resistance' && end_mm !== null && s.stop_mm < end_mm)
      .map((s) => s.stop_mm)
    return depths.length ? [{ canal, stop_mm: Math.max(...depths) }] : []
  })
}
