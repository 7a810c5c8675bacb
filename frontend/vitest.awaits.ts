import { type Plugin, parseAst } from 'vite'

// Every `await` on the way of an entry through the phone's store becomes a place where a test can stop the page for
// good. Only tests are built with this: the app on a phone knows nothing of it.

const ON_THE_WAY = /\/src\/(store\/(device\/database|outbox\/(record|outbox|pending|report|sender))|api\/client)\.ts$/

/** Parts of those files that no entry passes through. Whatever is not named here is stopped at. */
const OTHER_WAYS = [
  ...['closeDatabase', 'read', 'write', 'remove', 'forgetCached', 'readDevice', 'writeDevice'],
  ...['done', 'answerUnlessOut'],
]

interface Node {
  type: string
  start: number
  end: number
  argument?: Node
  id?: { name?: string } | null
  [key: string]: unknown
}

interface Found {
  name: string
  from: number
  to: number
}

/** The awaits of a file in their order, named by file, function and number. */
function awaitsIn(file: string, code: string): Found[] {
  const stops: Found[] = []
  const visit = (node: Node, within: string): void => {
    if (node.type === 'ForOfStatement' && node.await) throw new Error(`${file}: 'for await' cannot be stopped at yet`)
    const named = node.type === 'FunctionDeclaration' || node.type === 'VariableDeclarator'
    const inside = named && within === '' ? (node.id?.name ?? '') : within
    if (node.type === 'AwaitExpression' && node.argument && !OTHER_WAYS.includes(inside)) {
      const number = stops.filter(({ name }) => name.startsWith(`${file} ${inside} `)).length + 1
      stops.push({ name: `${file} ${inside} ${number}`, from: node.argument.start, to: node.argument.end })
    }
    for (const value of Object.values(node)) {
      for (const child of Array.isArray(value) ? value : [value]) {
        if (child && typeof child === 'object' && typeof child.type === 'string') visit(child as Node, inside)
      }
    }
  }
  visit(parseAst(code, { lang: 'ts' }) as unknown as Node, '')
  return stops
}

export const awaits: Plugin = {
  name: 'awaits-to-stop-at',
  enforce: 'pre',
  transform(code, id) {
    const file = ON_THE_WAY.exec(id)?.[0].replace('/src/', '')
    if (!file) return null
    const stops = awaitsIn(file, code)
    const edits = stops.flatMap(({ name, from, to }) => [
      { at: from, says: `atAwait(${JSON.stringify(name)}, ` },
      { at: to, says: ')' },
    ])
    let made = code
    for (const { at, says } of edits.sort((a, b) => b.at - a.at)) made = made.slice(0, at) + says + made.slice(at)
    const names = JSON.stringify(stops.map(({ name }) => name))
    // A module belongs to the page that loaded it.
    return { code: `const atAwait = globalThis.page?.loads(${names}) ?? ((_, told) => told); ${made}`, map: null }
  },
}
