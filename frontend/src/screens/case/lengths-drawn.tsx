import type { CanalShown, CaseShown, Length, Tooth } from '@/api/shapes'
import { LengthsBoard, type MeasuredCanal } from '@/parts/lengths-board/lengths-board'
import { useTooth } from '@/store/cache/cases'
import { pendingReadingsOf } from '@/store/outbox/pending-readings'

interface Props {
  of: CaseShown
  onMeasure: ((canal: string) => void) | undefined
}

/** The case's canals on the board of lengths, beside what is usual for their roots. */
export function LengthsDrawn({ of, onMeasure }: Props) {
  const tooth = useTooth(of.tooth.iso).value
  const pending = pendingReadingsOf(of.id).value
  if (of.canals.length === 0) return null
  const canals = of.canals.map((canal): MeasuredCanal => {
    const { id, name, length } = canal
    return {
      id,
      name,
      state: stateOf(canal),
      length_mm: length?.stop_mm ?? length?.estimate_mm ?? null,
      between: length?.estimated ?? null,
      // A training block is no tooth: nothing is usual for it.
      usual_mm: of.setting === 'block' ? null : usualOf(tooth, canal.root),
      waits: pending.some((reading) => reading.canal === id),
    }
  })
  return <LengthsBoard canals={canals} onOpen={onMeasure} />
}

const STATES: Record<Length['state'], MeasuredCanal['state']> = {
  missing: 'not measured',
  estimated: 'estimated',
  settled: 'settled',
  to_settle: 'to settle',
  unsettled: 'unsettled',
}

/** Readings that cannot be right together come to no length. */
const stateOf = ({ length, length_problem }: CanalShown): MeasuredCanal['state'] =>
  length ? STATES[length.state] : length_problem ? 'unsettled' : 'not measured'

/** The mean length of the root by a published set; of the whole tooth where the root has none. */
function usualOf(tooth: Tooth | undefined, root: string): number | null {
  const lengths = tooth?.lengths ?? []
  return (lengths.find((l) => l.root === root) ?? lengths.find((l) => l.root === null))?.mean_mm ?? null
}
