import type { Caution } from '@/api/shapes'
import { bandPath, depthPath } from '@/parts/rationale/paths'
import { about, mm } from '@/units/millimetres'
import { words } from '@/words/en'
import { type Board, yOf } from './geometry'
import type { DrawnProgress } from './moments'
import type { BoardCanal, CoronalStop } from './shape'

/** What is drawn at one height of a canal, in words, and where its reason stands in the canal's plan. */
export interface Mark {
  readonly y: number
  readonly title: string
  readonly value: string
  readonly of: readonly string[]
  /** What to do about it. */
  readonly does?: string
}

/** What stands in a canal's way or is to be borne in mind. */
export type Sign = Pick<Caution, 'canal' | 'severity' | 'says' | 'do' | 'overridden'>

interface Drawn {
  readonly board: Board
  readonly canal: BoardCanal
  readonly coronal: CoronalStop | undefined
  readonly signs: readonly Sign[]
  readonly progress: DrawnProgress | undefined
  readonly nameOf: (instrument: string) => string
}

const SIGN_Y = 12 // beside the canal's name
const NUMBER_BELOW = 12 // the middle of the number under the end's line
const NUMBER_ABOVE = 8 // the same over the line of a coronal stop

/** Every mark of one canal from the top down: signs, coronal stop, what was recorded and expected, end. */
export function marksOf({ board, canal, coronal, signs, progress, nameOf }: Drawn): Mark[] {
  const now = progress?.now?.canal === canal.canal
  const done = progress?.done.get(canal.canal)
  const at = (depth_mm: number) => yOf(board, depth_mm)
  const marks: Mark[] = signs.map(({ severity, says, ...sign }) => ({
    y: SIGN_Y,
    title: words.state[severity],
    value: says,
    does: sign.do,
    of: [],
  }))
  if (coronal && !now)
    marks.push({
      y: at(coronal.stop_mm) - NUMBER_ABOVE,
      title: words.rationale.coronal,
      value: mm(coronal.stop_mm),
      of: ['stops.coronal'],
    })
  for (const [i, step] of (canal.expectation?.steps ?? []).entries()) {
    const { instrument, felt, depth_mm, low_mm, high_mm } = step
    const name = nameOf(instrument)
    const recorded = felt != null && (done === undefined || i < done)
    const depths = low_mm != null && high_mm != null ? `${about(low_mm)}–${about(high_mm)}` : about(depth_mm)
    const band = step.as_if_straight ? `${depths}, ${words.expected.asIfStraight}` : depths
    marks.push(
      recorded
        ? { y: at(depth_mm), title: words.rationale.recorded(name), value: mm(depth_mm), of: [] }
        : { y: at(depth_mm), title: words.rationale.expected(name), value: band, of: [depthPath(i), bandPath(i)] },
    )
  }
  if (canal.end_mm !== null)
    marks.push({
      y: at(canal.end_mm) + NUMBER_BELOW,
      title: canal.joins !== null && canal.junction_mm !== null ? words.board.joins(canal.joins) : words.rationale.end,
      value: mm(canal.end_mm),
      of: ['end_mm'],
    })
  return marks.sort((a, b) => a.y - b.y)
}

/** A place on the board that answers a touch, and what is drawn there. */
export interface Zone {
  readonly top: number
  readonly height: number
  readonly marks: readonly Mark[]
}

/** Zones high enough to be hit, one below the other: each mark lies in one, none lies over another. */
export function zonesOf(marks: readonly Mark[], touch_px: number): Zone[] {
  const zones: Zone[] = []
  let below = 0
  for (let i = 0; i < marks.length; ) {
    const top = Math.max(below, (marks[i]?.y ?? 0) - touch_px / 2)
    below = top + touch_px
    const end = marks.findIndex(({ y }, j) => j > i && y > below)
    const next = end < 0 ? marks.length : end
    zones.push({ top, height: touch_px, marks: marks.slice(i, next) })
    i = next
  }
  return zones
}
