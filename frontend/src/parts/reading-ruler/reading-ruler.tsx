import { tenth } from '@/units/millimetres'
import { words } from '@/words/en'
import './reading-ruler.css'

/** A reading as a length of the tooth. */
export interface RulerReading {
  readonly says: string
  readonly mm: number
  /** It is being typed. */
  readonly typed?: boolean
}

interface Range {
  readonly low_mm: number
  readonly high_mm: number
}

interface Props {
  readings: readonly RulerReading[]
  usual: Range | undefined
  /** Where a further reading agrees with those there are. */
  agrees?: Range | undefined
}

const WIDTH = 320
const LINE_Y = 24
const HEIGHT = 44
const EDGE = 10
const ROOM_MM = 1 // beside what is drawn last

/** All readings of a canal on one line of millimetres, how far they lie apart, and what is usual for the tooth. */
export function ReadingRuler({ readings, usual, agrees }: Props) {
  const all = readings.map(({ mm }) => mm)
  const ends = [...all, ...[usual, agrees].flatMap((range) => (range ? [range.low_mm, range.high_mm] : []))]
  if (ends.length === 0) return null
  const from = Math.floor(Math.min(...ends) - ROOM_MM)
  const to = Math.ceil(Math.max(...ends) + ROOM_MM)
  const x = (mm: number) => EDGE + ((mm - from) / (to - from)) * (WIDTH - 2 * EDGE)
  const every = to - from > 14 ? 5 : 1
  const marks = Array.from({ length: to - from + 1 }, (_, i) => from + i)
  const [least, most] = [Math.min(...all), Math.max(...all)]
  return (
    <svg class="reading-ruler" viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-label={words.measure.ruler}>
      {usual && (
        <rect class="usual-range" x={x(usual.low_mm)} y={4} width={x(usual.high_mm) - x(usual.low_mm)} height={20} />
      )}
      {agrees && (
        <rect
          class="agrees"
          data-drawn="agrees"
          x={x(agrees.low_mm)}
          y={4}
          width={x(agrees.high_mm) - x(agrees.low_mm)}
          height={20}
        />
      )}
      {all.length > 1 && (
        <rect class="apart" data-drawn="apart" x={x(least)} y={8} width={Math.max(1, x(most) - x(least))} height={8} />
      )}
      <line class="axis" x1={x(from)} x2={x(to)} y1={LINE_Y} y2={LINE_Y} />
      {marks.map((mm) => (
        <line key={mm} class="axis" x1={x(mm)} x2={x(mm)} y1={LINE_Y} y2={LINE_Y + (mm % 5 === 0 ? 6 : 3)} />
      ))}
      {marks
        .filter((mm) => mm % (every === 5 ? 5 : 2) === 0)
        .map((mm) => (
          <text key={mm} x={x(mm)} y={HEIGHT - 3}>
            {mm}
          </text>
        ))}
      {readings.map(({ mm, says, typed }, i) => (
        <line
          key={`${says}${i}`}
          class="read"
          data-drawn="reading"
          data-typed={typed ?? false}
          x1={x(mm)}
          x2={x(mm)}
          y1={2}
          y2={LINE_Y}
        />
      ))}
    </svg>
  )
}

/** How far readings lie apart, to a tenth; nothing of fewer than two. */
export function apart(readings: readonly RulerReading[]): string | undefined {
  if (readings.length < 2) return undefined
  const all = readings.map(({ mm }) => mm)
  return tenth(Math.max(...all) - Math.min(...all))
}
