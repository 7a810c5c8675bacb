import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'

// Who may import whom: screens → parts, screens → store → api; words and shapes are plain and known to all.
const MAY: Record<string, readonly string[]> = {
  api: [],
  store: ['api', 'walk', 'words'],
  parts: ['walk', 'marks', 'words'],
  screens: ['parts', 'store', 'walk', 'marks', 'words', 'router', 'screens'],
  words: ['parts/millimetres'],
  worker: ['words'],
  // Walks run sheets by the rules the server walks by: plain, and known to screens.
  walk: [],
  // Measures marks by the rule the server measures by: plain, and known to screens.
  marks: [],
}

const src = join(import.meta.dirname, '../../frontend/src')
const files = readdirSync(src, { recursive: true, encoding: 'utf8' })
  .filter((name) => /\.tsx?$/.test(name) && !name.endsWith('generated.ts'))
  .map((name) => ({ name: name.replaceAll('\\', '/'), text: readFileSync(join(src, name), 'utf8') }))

/** What a file imports of the app, in words of its folders; names of types and refusals apart. */
function imports({ text }: { text: string }): string[] {
  return [...text.matchAll(/import\s+(type\s)?[^'"]*?['"]@\/([^'"]+)['"]/g)]
    .filter(([, type, path = '']) => !(type && path === 'api/shapes') && path !== 'api/problem')
    .map(([, , path = '']) => path)
}

describe.each(Object.entries(MAY))('%s', (folder, allowed) => {
  const own = files.filter((file) => file.name.startsWith(`${folder}/`))
  test.each(own)('$name', (file) => {
    const wrong = imports(file).filter(
      (path) => ![folder, ...allowed].some((a) => path === a || path.startsWith(`${a}/`)),
    )
    expect(wrong).toEqual([])
  })
})

test('only the store opens the database, only the API and the worker fetch', () => {
  const touching = (what: RegExp) => files.filter((f) => what.test(f.text)).map((f) => f.name)
  const opening = [
    'store/database.ts',
    'store/emergency-store.ts',
    'store/image-store.ts',
    'store/marking-store.ts',
    'store/schema.ts',
    'store/sent-store.ts',
  ]
  expect(touching(/from 'idb'|indexedDB\./).sort()).toEqual(opening)
  expect(touching(/\bfetch\(/).sort()).toEqual(['api/client.ts', 'worker/sw.ts'])
})
