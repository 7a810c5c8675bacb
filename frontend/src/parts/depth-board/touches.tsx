import { useState } from 'preact/hooks'
import { Reason, useReasons } from '@/parts/rationale/reasons'
import { Sheet } from '@/parts/rationale/sheet'
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
  const reasons = useReasons()
  const rationale = [...new Set(of.flatMap((path) => reasons?.find(canal, path) ?? []))]
  return (
    <section class="stack close board-said">
      <h3>
        {title} <span class="number">{value}</span>
      </h3>
      {does && <p>{does}</p>}
      {rationale.map((reason) => (
        <Reason key={reason.of} rationale={reason} rows={reasons?.rowsOf(reason) ?? []} />
      ))}
    </section>
  )
}
