import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import type { CanalShown, CaseShown, Reading } from '@/api/shapes'
import { bandOf, lengthBy } from '@/screens/case/measure/length-by'

interface Told {
  figures: Record<string, number>
  canals: {
    setting: CaseShown['setting']
    canal: Pick<CanalShown, 'resorption' | 'reference_point' | 'apex_mm'>
    readings: Reading[]
    lengths_mm: (number | null)[]
    /** Whether the last reading agrees with those before it; null where that was not asked. */
    agrees: boolean | null
  }[]
}

// What the planner settled: test_lengths.py writes it and starts this file.
const { figures, canals } = JSON.parse(readFileSync(process.env.TOLD ?? '', 'utf8')) as Told
const ROUNDING_MM = 0.005 // the planner counts in hundredths of a millimetre

test('the phone draws a reading at the length that the planner gives it', () => {
  expect(canals.length).toBeGreaterThan(0)
  for (const { setting, canal, readings, lengths_mm } of canals) {
    readings.forEach((reading, index) => {
      const length_mm = lengthBy(reading, figures, { setting }, canal)
      const planned_mm = lengths_mm[index] ?? undefined
      if (planned_mm === undefined) expect(length_mm, JSON.stringify(reading)).toBe(undefined)
      else
        expect(Math.abs((length_mm ?? Number.NaN) - planned_mm), JSON.stringify(reading)).toBeLessThanOrEqual(
          ROUNDING_MM,
        )
    })
  }
})

test('a reading agrees with those there are where the planner says so', () => {
  for (const { readings, lengths_mm, agrees } of canals) {
    const counted = readings.flatMap((reading, index) => {
      const length_mm = lengths_mm[index]
      return length_mm == null ? [] : [{ reading, length_mm }]
    })
    const last = counted.at(-1)
    if (agrees === null || !last) continue
    const band = bandOf(counted.slice(0, -1), false, figures)
    const inside =
      band !== undefined && band.low_mm - ROUNDING_MM <= last.length_mm && last.length_mm <= band.high_mm + ROUNDING_MM
    expect(inside, JSON.stringify(readings)).toBe(agrees)
  }
})
