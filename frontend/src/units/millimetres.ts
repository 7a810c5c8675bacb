/** A length as it is set on an instrument: one decimal, more only where there are more. */
export function mm(value_mm: number): string {
  const text = value_mm.toFixed(2).replace(/0+$/, '')
  return text.endsWith('.') ? `${text}0` : text
}

/** A length that is an estimate: to a tenth, no finer than it can be meant. */
export function about(value_mm: number): string {
  return value_mm.toFixed(1)
}

/** The millimetres that were typed; decimal comma or point. Nothing for what is no number. */
export function readMm(typed: string): number | undefined {
  const text = typed.trim().replace(',', '.')
  return /^-?\d{1,3}(\.\d{0,3})?$/.test(text) ? Number(text) : undefined
}

/** To a tenth of a millimetre: what is measured on an image and not set on a stop. */
export function tenth(length_mm: number): string {
  return length_mm.toFixed(1)
}
