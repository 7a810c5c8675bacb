import { pointsOf } from '@/panels/marks/draft'
import type { Marks } from '@/panels/marks/use-marks'
import { Notice } from '@/parts/notice'
import { words } from '@/words/en'
import type { Ask, TooFar } from './asks'

/** Which mark is picked, by touch of a large button: on a small image marks lie closer than fingers. */
export function Picking({ marks }: { marks: Marks }) {
  const { length } = pointsOf(marks.draft, marks.active)
  if (length === 0) return null
  const { picked } = marks
  const step = (by: number) => marks.pick(picked === undefined ? length - 1 : (picked + by + length) % length)
  return (
    <div class="marks-picking">
      <button type="button" class="button" aria-label={words.marks.pickBefore} onClick={() => step(-1)}>
        ‹
      </button>
      <span role="status">{words.marks.pickedOf(picked === undefined ? undefined : picked + 1, length)}</span>
      <button type="button" class="button" aria-label={words.marks.pickNext} onClick={() => step(1)}>
        ›
      </button>
    </div>
  )
}

/** Asks to look closer at a mark that was set on an image shown too small. */
export function LookCloser({ tooFar, onNear }: { tooFar: TooFar; onNear: (near: TooFar['near']) => void }) {
  return (
    <Notice sign="caution" action={{ says: words.marks.nearerThere, onDo: () => onNear(tooFar.near) }}>
      {words.marks.tooSmall(tooFar.off_mm.toFixed(1))}
    </Notice>
  )
}

/** What a line is asked about; the mark is picked by a touch. */
export function Asked({ asks, marks }: { asks: readonly Ask[]; marks: Marks }) {
  return asks.map(({ point, kind }) => (
    <Notice
      key={`${kind} ${point}`}
      sign="caution"
      action={{ says: words.marks.pickMark(point + 1), onDo: () => marks.pick(point) }}
    >
      {words.marks.ask[kind](point + 1)}
    </Notice>
  ))
}
