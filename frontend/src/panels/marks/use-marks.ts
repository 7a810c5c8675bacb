import { useState } from 'preact/hooks'
import type { Draft as Kept } from '@/store/session/drafts'
import {
  asScale,
  type Draft,
  type MarkSpot,
  movedTo,
  placed,
  pointsOf,
  type Role,
  SCALE,
  withKnown,
  withLine,
  without,
  withRole,
} from './draft'

const STEPS = 100 // that can be taken back: more than anyone marks on one image

/** What is marked and how it changes: every change can be taken back, a drag in one step. */
export function useMarks(kept: Kept<{ draft: Draft }>, first: string) {
  const { draft } = kept.fields.value
  const [active, setActive] = useState(first)
  const [picked, setPicked] = useState<number>()
  const [past, setPast] = useState<readonly Draft[]>([])
  const [held, setHeld] = useState<Draft>()
  const [tip, setTip] = useState(false)

  const put = (next: Draft) => kept.set({ draft: next })
  const change = (next: Draft) => {
    setPast([...past.slice(-STEPS), draft])
    put(next)
  }
  return {
    draft,
    active,
    picked,
    /** The next mark is the tip of an instrument. */
    tip,
    canUndo: past.length > 0,
    turn(to: string) {
      setActive(to)
      setPicked(undefined)
      setTip(false)
    },
    pick: setPicked,
    place(at: MarkSpot) {
      if (tip && active !== SCALE) {
        change(withLine(draft, active, { tip: at }))
        setTip(false)
        return
      }
      const after = picked ?? (pointsOf(draft, active).length > 0 ? pointsOf(draft, active).length - 1 : undefined)
      change(placed(draft, active, after, at))
      setPicked(after === undefined ? 0 : after + 1)
    },
    move(number: number, to: MarkSpot) {
      if (!held) setHeld(draft)
      put(movedTo(draft, active, number, to))
    },
    moved() {
      if (held && held !== draft) setPast([...past.slice(-STEPS), held])
      setHeld(undefined)
    },
    remove() {
      if (picked === undefined) return
      change(without(draft, active, picked))
      setPicked(undefined)
    },
    role(role: Role) {
      if (picked !== undefined && active !== SCALE) change(withRole(draft, active, picked, role))
    },
    markTip: () => setTip(!tip),
    line: (of: Parameters<typeof withLine>[2]) => change(withLine(draft, active, of)),
    asScale: () => change(asScale(draft, active)),
    known: (of: Parameters<typeof withKnown>[1]) => change(withKnown(draft, of)),
    /** Begins from marks that somebody made before. */
    begin: change,
    undo() {
      const last = past.at(-1)
      if (!last) return
      put(last)
      setPast(past.slice(0, -1))
      setPicked(undefined)
    },
  }
}

export type Marks = ReturnType<typeof useMarks>
