import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'

// Contrast after WCAG 2.2: relative luminance of sRGB, (lighter + 0.05) / (darker + 0.05).

function tokensOf(block: string | undefined): Record<string, string> {
  return Object.fromEntries([...(block ?? '').matchAll(/--([a-z-]+): (#[0-9a-f]{6})/g)].map((m) => [m[1], m[2]]))
}

const css = readFileSync(join(import.meta.dirname, '../../frontend/src/look/tokens.css'), 'utf8')

/** A colour of each scheme, told once. */
const both = [...css.matchAll(/--([a-z-]+): light-dark\((#[0-9a-f]{6}), (#[0-9a-f]{6})\)/g)]
const light = Object.fromEntries(both.map(([, name, first]) => [name, first]))
const dark = Object.fromEntries(both.map(([, name, , second]) => [name, second]))
const paper = tokensOf(css.slice(css.indexOf('@media print')))

function luminance(hex: string): number {
  const [r = 0, g = 0, b = 0] = [1, 3, 5]
    .map((i) => Number.parseInt(hex.slice(i, i + 2), 16) / 255)
    .map((c) => (c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4))
  return 0.2126 * r + 0.7152 * g + 0.0722 * b
}

function contrast(a: string | undefined, b: string | undefined): number {
  if (!a || !b) throw new Error('a token is missing')
  const [dark = 0, light = 0] = [luminance(a), luminance(b)].sort((x, y) => x - y)
  return (light + 0.05) / (dark + 0.05)
}

const TEXT = [
  ...['paper', 'card', 'sunk', 'now-ground', 'caution-ground', 'stop-ground', 'settled-ground', 'prepared'].map(
    (on) => ['ink', on],
  ),
  ...['paper', 'card', 'sunk', 'now-ground', 'caution-ground', 'stop-ground', 'settled-ground'].map((on) => [
    'soft',
    on,
  ]),
  ...['now', 'caution', 'stop', 'settled'].flatMap((of) => [
    [of, 'paper'],
    [of, 'card'],
    [of, `${of}-ground`],
  ]),
] as [string, string][]
const NEXT_STEP = [
  ['ink', 'paper'],
  ['ink', 'card'],
  ['ink', 'now-ground'],
  ['paper', 'ink'],
] as [string, string][]
const LINES = ['rule', 'now-mark', 'ink'].flatMap((of) => [
  [of, 'paper'],
  [of, 'card'],
]) as [string, string][]

// The same in every scheme.
const onNow = tokensOf(css)['on-now']

describe.each([
  ['light', light],
  ['dark', dark],
  ['printed', paper],
])('the %s tokens', (_, tokens) => {
  test.each(TEXT)('text %s on %s', (of, on) => {
    expect(contrast(tokens[of], tokens[on])).toBeGreaterThanOrEqual(4.5)
  })
  test.each(NEXT_STEP)('what is read at arm’s length, %s on %s', (of, on) => {
    expect(contrast(tokens[of], tokens[on])).toBeGreaterThanOrEqual(7)
  })
  test('what stands on the present mark', () => {
    if (tokens !== paper) expect(contrast(onNow, tokens['now-mark'])).toBeGreaterThanOrEqual(4.5)
  })
  test.each(LINES)('drawn lines %s on %s', (of, on) => {
    expect(contrast(tokens[of], tokens[on])).toBeGreaterThanOrEqual(3)
  })
})

test('every colour is told for both schemes, and on paper', () => {
  expect(both.length).toBeGreaterThan(15)
  // Nothing has the focus on paper.
  const printed = both.map(([, name]) => name).filter((name) => name !== 'focus')
  expect(Object.keys(paper)).toEqual(expect.arrayContaining(printed))
})

// Colours of sizes are the standard's (ISO 3630-1), those under an image black and white for what they are.
const OWN_COLOURS = ['parts/instrument.css', 'parts/image-board/image-board.css', 'panels/images/images.css']

test('no other file has colours of its own', () => {
  const src = join(import.meta.dirname, '../../frontend/src')
  const styles = readdirSync(src, { recursive: true, encoding: 'utf8' }).filter((path) => path.endsWith('.css'))
  const colourful = styles.filter((path) =>
    /#[0-9a-f]{3,8}\b|rgba?\(|hsla?\(/i.test(readFileSync(join(src, path), 'utf8')),
  )
  expect(colourful.toSorted()).toEqual(['look/tokens.css', ...OWN_COLOURS].toSorted())
})
