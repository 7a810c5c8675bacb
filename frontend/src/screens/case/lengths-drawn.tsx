import type { CaseShown, Tooth } from '@/api/shapes'
import { LengthsBoard, type MeasuredCanal } from '@/parts/lengths-board/lengths-board'
import { useTooth } from '@/store/cache/cases'
import { pendingReadingsOf } from '@/store/outbox/pending-readings'

interface Props {
  of: CaseShown
  picked: string | undefined
  onPick: (canal: string) => void
}

/** The case's canals on the board of lengths, beside what is usual for their roots. */
export function LengthsDrawn({ of, picked, onPick }: Props) {
  const tooth = useTooth(of.tooth.iso).value
  const pending = pendingReadingsOf(of.id).value
  const canals = of.canals.map(
    ({ id, name, reference_point, root, length, length_problem }): MeasuredCanal => ({
      name,
      reference_point,
      length,
      // Readings that cannot be right together come to no length.
      state: length?.state ?? (length_problem ? 'unsettled' : 'missing'),
      // A training block is no tooth: nothing is usual for it.
      usual_mm: of.setting === 'block' ? null : usualOf(tooth, root),
      waits: pending.some((reading) => reading.canal === id),
    }),
  )
  return <LengthsBoard canals={canals} picked={picked} onPick={onPick} />
}

/** The mean length of the root by a published set; of the whole tooth where the root has none. */
function usualOf(tooth: Tooth | undefined, root: string): number | null {
  const lengths = tooth?.lengths ?? []
  return (lengths.find((l) => l.root === root) ?? lengths.find((l) => l.root === null))?.mean_mm ?? null
}
