import type { CanalShown, CaseShown, Reading } from '@/api/shapes'
import { toothBy } from '@/panels/readings/reading-fields'

/** By their keys [mm]. */
type Figures = Readonly<Record<string, number>>

const ESTIMATES: readonly Reading['method'][] = ['pre_operative_image', 'ratio']

/** The working length that a reading gives [mm], as the planner takes it; nothing where it does not count. */
export function lengthBy(
  reading: Reading,
  figures: Figures,
  { setting }: Pick<CaseShown, 'setting'>,
  { resorption, reference_point, apex_mm }: Pick<CanalShown, 'resorption' | 'reference_point' | 'apex_mm'>,
): number | undefined {
  // What is not known makes no length.
  const figure = (key: string) => figures[key] ?? Number.NaN
  const less = () => {
    const setBack = figure(`set_back.${resorption}`)
    switch (reading.method) {
      case 'pre_operative_image':
      case 'ratio': {
        const usual = reading.method === 'ratio' ? setBack : Math.max(setBack, figure('allowance.image'))
        return reading.interval ? Math.max(usual, toothBy(reading) - reading.interval.least_mm) : usual
      }
      case 'confirming_image':
        return Math.abs(reading.tip_short_mm) <= figure('lengths.tip_too_far') ? setBack : Number.NaN
      case 'apex_locator': {
        const holds = reading.stable && apartBy(reading) <= figure('locator.repeat_within')
        const isWide = apex_mm != null && apex_mm > figure('locator.widest_foramen')
        if (!holds || isWide) return Number.NaN
        return reading.mark === 'constriction' ? 0 : figure('locator.apex_mark_less')
      }
      case 'direct_sight':
        return figure(setting === 'block' ? 'set_back.block' : 'set_back.seen_at_foramen')
    }
  }
  if (reading.reference_point !== reference_point) return undefined
  const length_mm = toothBy(reading) - less()
  return Number.isNaN(length_mm) ? undefined : length_mm
}

/** How far the two readings of a locator lie apart [mm], without what is left of binary fractions. */
const apartBy = ({ read_mm, repeat_mm }: Extract<Reading, { method: 'apex_locator' }>) =>
  Math.abs(Math.round(read_mm * 1000) - Math.round(repeat_mm * 1000)) / 1000

/** A reading that counts, and the working length it gives. */
interface Counted {
  readonly reading: Reading
  readonly length_mm: number
}

/** Between what lengths a further reading agrees with those that count; nothing where they disagree already. */
export function bandOf(
  counted: readonly Counted[],
  afterFlaring: boolean,
  figures: Figures,
): { low_mm: number; high_mm: number } | undefined {
  // A later reading of a method replaces the one before; those before and after flaring are settled apart.
  const like = counted.filter(({ reading }) => reading.after_flaring === afterFlaring)
  const latest = [...new Map(like.map((each) => [each.reading.method, each])).values()]
  const measured = latest.filter(({ reading }) => !ESTIMATES.includes(reading.method))
  // An estimate only tests what was measured.
  const within_mm = figures[measured.length > 0 ? 'lengths.agree_within' : 'lengths.estimate_within']
  const ends = (measured.length > 0 ? measured : latest).map(({ length_mm }) => length_mm)
  if (within_mm === undefined || ends.length === 0) return undefined
  const band = { low_mm: Math.max(...ends) - within_mm, high_mm: Math.min(...ends) + within_mm }
  return band.low_mm <= band.high_mm ? band : undefined
}
