import { readMm } from '@/units/millimetres'
import { words } from '@/words/en'
import table from './bounds.json'

export type Quantity = keyof typeof table.quantities

interface Bounds {
  readonly unit: string
  readonly least: number
  readonly most: number
  /** How far one press of a button goes, and where an empty field begins. */
  readonly step?: number
  readonly begins?: number
  readonly sentence: string
  readonly whole: boolean
}

/** What may be entered of a quantity: the server's own rows, written into the app. */
export const BOUNDS: Record<Quantity, Bounds> = table.quantities

/** A number charted of a canal, by its path in the canal. */
export type FactName = keyof typeof table.facts

/** What is charted of a canal in numbers, as the server declares it. */
export const FACTS = table.facts as Record<FactName, { label: string; quantity: Quantity; usual: boolean }>

/** A yes or no charted of a tooth. */
export type ToothFactName = keyof typeof table.tooth

/** Those facts, and in which settings a form asks for them. */
export const TOOTH_FACTS: Record<ToothFactName, { label: string; settings: string[] }> = table.tooth

/** What is wrong with a number as typed, in the words the server would use; nothing where it is right. */
export function wrongOf(quantity: Quantity, typed: string): string | undefined {
  const value = readMm(typed)
  if (value === undefined) return words.fields.noNumber
  const { least, most, sentence, whole } = BOUNDS[quantity]
  if (value < least || most < value) return sentence
  return whole && !Number.isInteger(value) ? words.fields.noWhole : undefined
}
