import { readdirSync, readFileSync } from 'node:fs'
import { basename, dirname, join, normalize } from 'node:path'
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

const reads = new Map(files.map((file) => [file.name, named(file).map(({ path }) => modules.get(path) ?? '')]))
const readers = (name: string) => files.filter((file) => reads.get(file.name)?.includes(name)).map((file) => file.name)

// Begun by the browser, or by the build: nothing of the app reads them. The last is read by `sw.ts` alone, which only a
// worker can load, and by its tests.
const BEGUN = ['env.d.ts', 'app/main.tsx', 'worker/whole.ts']

const SMALL_LINES = 30

// What is loaded together, and what is read as `words.…`: small or not, each stands for itself.
const FOR_ITSELF = ['words', 'app/groups']

/** Files of the same name that hold the same rule on the server. */
const server = ['planning', 'cases'].flatMap((folder) =>
  readdirSync(join(src, '../..', folder), { recursive: true, encoding: 'utf8' }).map((path) => basename(path)),
)

test('a small file has two readers, or a twin on the server, or is a screen of its own', () => {
  const single = files
    .filter(({ name, text }) => text.split('\n').length - 1 < SMALL_LINES && !BEGUN.includes(name))
    .filter(({ name }) => !FOR_ITSELF.some((folder) => name.startsWith(`${folder}/`)))
    .filter(({ name }) => {
      const [folder = '', own] = name.split('/').slice(-2)
      const stem = own?.replace(/\.tsx?$/, '') ?? ''
      const twin = ['walk', 'marks'].includes(folder) && server.includes(`${stem.replaceAll('-', '_')}.py`)
      return folder !== stem && !twin
    })
  expect(single.map(({ name }) => name).filter((name) => readers(name).length < 2)).toEqual([])
})

/** The names that a file takes from others: in braces, or with the name of the whole module before them. */
function takenBy(text: string): string[] {
  const braces = [...text.matchAll(/(?:import|export) (?:type )?\{([^}]*)\}|\{([\w\s,]*)\}(?=[^=;]*= await )/g)]
  const modules = [...text.matchAll(/import (?:type )?\* as (\w+)|import \{ (words) \}/g)].map(
    ([, module, words]) => module ?? words ?? '',
  )
  return [
    ...braces.flatMap(([, inner, other]) =>
      (inner ?? other ?? '').split(',').map((name) => name.replace(/^\s*type /, '')),
    ),
    ...modules.flatMap((module) =>
      [...text.matchAll(new RegExp(`\\b${module}\\.(\\w+)`, 'g'))].map(([, name = '']) => name),
    ),
  ].map((name) => name.trim().split(' ')[0] ?? '')
}

test('whatever a file hands out, another file takes', () => {
  const tests = readdirSync(import.meta.dirname, { encoding: 'utf8' })
    .filter((name) => /\.tsx?$/.test(name))
    .map((name) => readFileSync(join(import.meta.dirname, name), 'utf8'))
  const taken = new Set([...files.map(({ text }) => text), ...tests].flatMap(takenBy))
  const unused = files.flatMap(({ name, text }) =>
    [...text.matchAll(/^export (?:async |declare )*(?:function\*?|const|let|class|interface|type|enum) (\w+)/gm)]
      .map(([, word = '']) => word)
      .filter((word) => !taken.has(word))
      .map((word) => `${name}: ${word}`),
  )
  expect(unused).toEqual([])
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
  // The first use of these makes a phone read its tables of languages, which takes it longer than a screen.
  expect(touching(/\bIntl\.|\.toLocale/)).toEqual([])
})

test('no test waits by a wait of its own, which a busy machine outlasts', () => {
  const tests = readdirSync(import.meta.dirname, { recursive: true, encoding: 'utf8' }).filter((name) =>
    /\.tsx?$/.test(name),
  )
  const impatient = tests.filter((name) =>
    /vi\.waitFor|\{ timeout: \d|sleep\(/.test(readFileSync(join(import.meta.dirname, name), 'utf8')),
  )
  expect(impatient).toEqual([])
})
