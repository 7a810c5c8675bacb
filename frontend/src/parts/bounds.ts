import { readMm } from '@/units/millimetres'
import { words } from '@/words/en'
import table from './bounds.json'

export type Quantity = keyof typeof table.quantities

/** What may be entered of a quantity: the server's own rows, written into the app. */
export const BOUNDS: Record<Quantity, { least: number; most: number; sentence: string; whole: boolean }> =
  table.quantities

/** What is wrong with a number as typed, in the words the server would use; nothing where it is right. */
export function wrongOf(quantity: Quantity, typed: string): string | undefined {
  const value = readMm(typed)
  if (value === undefined) return words.fields.noNumber
  const { least, most, sentence, whole } = BOUNDS[quantity]
  if (value < least || most < value) return sentence
  return whole && !Number.isInteger(value) ? words.fields.noWhole : undefined
}
