/** Where in a canal's plan a number stands, as its reasons name it. */

export const depthPath = (index: number): string => `expectation.steps[${index}].depth_mm`

export const stopPath = (target: string | null): string => `stops.${target ?? 'to_length'}`

export const needlePath = (index: number): string => `needle.now[${index}].at_most_mm`

/**
 * The paths under which a number's reason may be given, nearest first: its own, the same for every place of a list,
 * then what it is part of.
 */
export function pathsOf(path: string): string[] {
  const parts = path.split('.')
  const up = parts.map((_, i) => parts.slice(0, parts.length - i).join('.'))
  return up.flatMap((one) => [one, one.replace(/\[\d+\]/g, '')])
}
