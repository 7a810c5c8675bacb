import { sizeOf } from '@/parts/final-size'
import { mm } from '@/units/millimetres'
import { words } from '@/words/en'
import type { BoardCanal, CoronalStop } from './shape'

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
