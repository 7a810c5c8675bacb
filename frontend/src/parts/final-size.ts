import type { CanalPlan, Caution, SizeRange } from '@/api/shapes'
import { words } from '@/words/en'

/** The caution that a supervisor lets pass by choosing a size. */
export const WIDE_CANAL = 'wide-canal'

type Sized = Pick<CanalPlan, 'final_size' | 'final_taper'>

/** Final size and taper as the trade names an instrument. */
export const sizeOf = ({ final_size, final_taper }: Sized): string =>
  final_size === null ? words.size.none : `${final_size}/.${String(final_taper).padStart(2, '0')}`

/** A wide canal asks for more than it bears: no size is proposed, a supervisor chooses. */
export const isWide = ({ proposed }: Pick<SizeRange, 'proposed'>): boolean => proposed === null

/** The advised range in words. */
export const advised = ({ least, most }: Pick<SizeRange, 'least' | 'most'>): string =>
  least > most ? words.size.apart(least, most) : `${least}–${most}`

/** Whether a supervisor has chosen the size of this wide canal. */
export const isDecided = (cautions: readonly Caution[], canal: string): boolean =>
  cautions.some((caution) => caution.code === WIDE_CANAL && caution.canal === canal && caution.overridden != null)
