import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'

// The judge is what is made from the API's description: a choice that it has is taken from there.
const src = join(import.meta.dirname, '../../frontend/src')
const read = (path: string) => readFileSync(join(src, path), 'utf8')

const choicesIn = (text: string, quote: string) => {
  const literal = `${quote}[\\w.-]+${quote}`
  const unions = text.match(new RegExp(`${literal}(?:\\s*\\|\\s*${literal})+`, 'g')) ?? []
  return unions.map((union) => (union.match(/[\w.-]+/g) ?? []).sort().join(' '))
}

const generated = new Set(choicesIn(read('api/generated.ts'), '"'))
const written = readdirSync(src, { recursive: true, encoding: 'utf8' }).filter(
  (path) => /\.tsx?$/.test(path) && !path.endsWith('generated.ts'),
)

test('a choice of the API is never typed again by hand', () => {
  expect(generated.has('discarded whole')).toBe(true)
  expect(written.length).toBeGreaterThan(300)
  const again = written.flatMap((path) => {
    // What an object leaves out or picks are names of its fields, not a choice.
    const text = read(path).replace(/(?:Pick|Omit|Extract|Exclude|PayloadOf|EventOf|Has)<[^>]*>/g, '')
    return choicesIn(text, "'")
      .filter((choice) => generated.has(choice))
      .map((choice) => `${path}: ${choice}`)
  })
  expect(again).toEqual([])
})
