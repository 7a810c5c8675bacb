import { useState } from 'preact/hooks'
import { Reason } from '@/parts/rationale/reason'
import { Sheet } from '@/parts/rationale/sheet'
import { useReasons } from '@/parts/rationale/why'
import { words } from '@/words/en'
import { placeOf } from './frame'
import type { Board } from './geometry'
import type { Mark, Zone } from './marks'

interface Props {
  board: Board
  /** By canal, in the order of the columns. */
  zones: readonly (readonly [canal: string, zones: readonly Zone[]])[]
}

/** Over the drawing: every mark answers a touch and a key with what it is, and why it is where it is. */
export function Touches({ board, zones }: Props) {
  const [open, setOpen] = useState<{ canal: string; marks: readonly Mark[] }>()
  return (
    <>
      {zones.map(([canal, each], column) =>
        each.map(({ top, height, marks }) => (
          <button
            key={`${canal} ${top}`}
            type="button"
            class="board-touch"
            data-drawn="touch"
            aria-haspopup="dialog"
            aria-label={words.rationale.marks(canal, marks)}
            style={{
              ...placeOf(board, column),
              top: `${top}px`,
              height: `${height}px`,
            }}
            onClick={() => setOpen({ canal, marks })}
          />
        )),
      )}
      {open && (
        <Sheet title={open.canal} onClose={() => setOpen(undefined)}>
          {open.marks.map((mark, i) => (
            <MarkText key={`${i}${mark.title}`} canal={open.canal} mark={mark} />
          ))}
        </Sheet>
      )}
    </>
  )
}

function MarkText({ canal, mark: { title, value, does, of } }: { canal: string; mark: Mark }) {
  const plan = useReasons()
  const every = of.flatMap((path) => plan?.find(canal, path, value) ?? [])
  const reasons = [...new Map(every.map((reason) => [reason.rationale, reason])).values()]
  return (
    <section class="stack close board-said">
      <h3>
        {title} <span class="number">{value}</span>
      </h3>
      {does && <p>{does}</p>}
      {reasons.map((reason) => (
        <Reason key={reason.rationale.of} of={reason} rows={plan?.rowsOf(reason) ?? []} />
      ))}
    </section>
  )
}
