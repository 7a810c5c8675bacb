import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { parseAst } from 'vite'
import { expect, test } from 'vitest'

// What a thing is called where it is worked with is its noun. tests/architecture/test_names.py refuses the same names.
const SAYS_NOTHING = ['told', 'found', 'one', 'given']

interface Node {
  type: string
  name?: string
  [key: string]: unknown
}

const isNode = (value: unknown): value is Node => typeof (value as Node | null)?.type === 'string'
const nodesIn = (value: unknown): Node[] => [value].flat().filter(isNode)

/** The names that a pattern gives a value to: `{ a: b, ...c }` those of `b` and `c`. */
function namesOf(pattern: Node): string[] {
  if (pattern.type === 'Identifier') return [pattern.name ?? '']
  const parts = [pattern.properties, pattern.elements, pattern.value, pattern.left, pattern.argument].flatMap(nodesIn)
  return pattern.type === 'MemberExpression' ? [] : parts.flatMap(namesOf)
}

/** Every name that is given to a variable, a parameter or a function. */
function localNames(code: string, lang: 'ts' | 'tsx' = 'ts'): string[] {
  const visit = (node: Node): string[] => {
    const declares = node.type === 'VariableDeclarator' || node.type === 'FunctionDeclaration'
    const named = [...(declares ? nodesIn(node.id) : []), ...nodesIn(node.params), ...nodesIn(node.param)]
    return [...named.flatMap(namesOf), ...Object.values(node).flatMap(nodesIn).flatMap(visit)]
  }
  return visit(parseAst(code, { lang }) as unknown as Node)
}

const root = join(import.meta.dirname, '../..')
const files = ['frontend/src', 'tests/frontend', 'tests/walkers'].flatMap((folder) =>
  readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })
    .filter((name) => /\.tsx?$/.test(name) && !name.endsWith('generated.ts'))
    .map((name) => join(folder, name)),
)

const namesIn = (file: string) => localNames(readFileSync(join(root, file), 'utf8'), file.endsWith('x') ? 'tsx' : 'ts')

test('a local name says the noun', () => {
  const names = files.map((file) => [file, namesIn(file)] as const)
  expect(names.flatMap(([, own]) => own).length).toBeGreaterThan(files.length)
  const empty = names.flatMap(([file, own]) => own.filter((n) => SAYS_NOTHING.includes(n)).map((n) => `${file}: ${n}`))
  expect(empty).toEqual([])
})

test.each([
  'const found = 1',
  'const { given } = preview',
  'const { event: told } = chair',
  'const [one, ...others] = list',
  'let { rest: [found = 1] } = list',
  'function told() {}',
  'const f = (one: string) => one',
  'type F = (told: string) => void',
  'list.map(({ ...given }) => given)',
])('%s is refused', (code) => {
  expect(localNames(code).filter((name) => SAYS_NOTHING.includes(name))).toHaveLength(1)
})

test('a field may be called after what it holds', () => {
  expect(
    localNames('const check = { found: 1, given: 2 }; check.found = check.one; type T = { told: string }'),
  ).toEqual(['check'])
})
