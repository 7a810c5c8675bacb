import { readdirSync, readFileSync } from 'node:fs'
import { dirname, join, normalize } from 'node:path'
import { describe, expect, test } from 'vitest'

// Who may import whom. `words` and `units` are plain; `walk` and `marks` are the server's rules once more.
const MAY: Record<string, readonly string[]> = {
  api: [],
  units: [],
  words: ['units'],
  walk: [],
  marks: [],
  store: ['api', 'walk', 'words'],
  parts: ['walk', 'marks', 'words', 'units'],
  panels: ['parts', 'store', 'walk', 'marks', 'words', 'units', 'router'],
  screens: ['panels', 'parts', 'store', 'walk', 'marks', 'words', 'units', 'router'],
  app: ['screens', 'panels', 'parts', 'store', 'words', 'router', 'worker'],
  worker: ['words'],
}

// Inside the store each folder knows those before it.
const STORE = ['device', 'session', 'cache', 'outbox', 'chair', 'images', 'forms']

const src = join(import.meta.dirname, '../../frontend/src')
const files = readdirSync(src, { recursive: true, encoding: 'utf8' })
  .filter((name) => /\.tsx?$/.test(name) && !name.endsWith('generated.ts'))
  .map((name) => ({ name: name.replaceAll('\\', '/'), text: readFileSync(join(src, name), 'utf8') }))
const modules = new Map(files.map(({ name }) => [name.replace(/\.tsx?$/, ''), name]))

/** The modules of the app that a file names, types and all. */
function named({ name, text }: { name: string; text: string }): { path: string; type: boolean }[] {
  return [...text.matchAll(/(?:import|export)\s+(type\s)?[^'"]*?from\s+['"]([@.][^'"]*)['"]/g)].map(
    ([, type, path = '']) => ({
      path: path.startsWith('@/') ? path.slice(2) : normalize(join(dirname(name), path)).replaceAll('\\', '/'),
      type: type !== undefined,
    }),
  )
}

/** What a file imports of the app; types of the API and refusals apart, which are known to all. */
const imports = (file: { name: string; text: string }): string[] =>
  named(file)
    .filter(({ path, type }) => !(type && path === 'api/shapes') && path !== 'api/problem')
    .map(({ path }) => path)

describe.each(Object.entries(MAY))('%s', (folder, allowed) => {
  const own = files.filter((file) => file.name.startsWith(`${folder}/`))
  test.each(own)('$name', (file) => {
    const wrong = imports(file).filter(
      (path) => ![folder, ...allowed].some((a) => path === a || path.startsWith(`${a}/`)),
    )
    expect(wrong).toEqual([])
  })
})

test('every folder has its place', () => {
  const folders = files.map(({ name }) => name.split('/')).filter((path) => path.length > 1)
  expect([...new Set(folders.map(([first]) => first))].sort()).toEqual(Object.keys(MAY).sort())
  const inStore = folders.filter(([first]) => first === 'store').map(([, second]) => second)
  expect([...new Set(inStore)].sort()).toEqual([...STORE].sort())
})

test('no screen imports another', () => {
  const of = (path: string) => path.split('/').slice(0, 2).join('/')
  const wrong = files
    .filter(({ name }) => name.startsWith('screens/'))
    .flatMap((file) =>
      imports(file)
        .filter((path) => path.startsWith('screens/') && of(path) !== of(file.name))
        .map((path) => `${file.name} imports ${path}`),
    )
  expect(wrong).toEqual([])
})

test('inside the store nothing imports what stands above it', () => {
  const floor = (path: string) => STORE.indexOf(path.split('/')[1] ?? '')
  const wrong = files
    .filter(({ name }) => name.startsWith('store/'))
    .flatMap((file) =>
      named(file)
        .filter(({ path }) => path.startsWith('store/') && floor(path) > floor(file.name))
        .map(({ path }) => `${file.name} imports ${path}`),
    )
  expect(wrong).toEqual([])
})

test('no file comes back to itself by what it imports', () => {
  const graph = new Map(
    files.map((file) => [
      file.name,
      named(file).flatMap(({ path }) => modules.get(path) ?? modules.get(`${path}/index`) ?? []),
    ]),
  )
  const clear = new Set<string>()
  const circles: string[] = []
  const follow = (name: string, way: readonly string[]): void => {
    if (clear.has(name)) return
    if (way.includes(name)) {
      circles.push([...way.slice(way.indexOf(name)), name].join(' → '))
      return
    }
    for (const next of graph.get(name) ?? []) follow(next, [...way, name])
    clear.add(name)
  }
  for (const name of graph.keys()) follow(name, [])
  expect(circles).toEqual([])
})

test('only the store opens the database, only the API and the worker fetch', () => {
  const touching = (what: RegExp) => files.filter((f) => what.test(f.text)).map((f) => f.name)
  const opening = [
    'store/device/database.ts',
    'store/device/schema.ts',
    'store/images/image-store.ts',
    'store/images/marking-store.ts',
    'store/outbox/acknowledged-store.ts',
    'store/outbox/emergency-store.ts',
  ]
  expect(touching(/from 'idb'|indexedDB\./).sort()).toEqual(opening)
  expect(touching(/\bfetch\(/).sort()).toEqual(['api/client.ts', 'worker/sw.ts'])
})
