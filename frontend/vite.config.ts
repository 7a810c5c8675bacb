import { createHash } from 'node:crypto'
import { readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join, relative } from 'node:path'
import { fileURLToPath } from 'node:url'
import { brotliCompressSync, gzipSync } from 'node:zlib'
import { build, defineConfig, type Plugin, type Rolldown } from 'vite'

const root = fileURLToPath(new URL('.', import.meta.url))
/** Where what is built lies. */
const BUILT = join(root, 'dist')
const alias = { '@': join(root, 'src') }
/** What the development server hands on. The host stays the page's own: Django refuses a change from another origin. */
const OF_DJANGO = ['/api', '/admin', '/static', '/lti', '/livez', '/readyz']
const DJANGO = `http://127.0.0.1:${process.env.DJANGO_PORT ?? 8000}`

// What several screens share would be many small files on the line: it goes together, by what it is for. Nothing of the
// first screen is among it.
const OF_LISTS =
  /src.(panels.(case-row|account-link|set-aside)|store.(outbox.left-over|forms.sending)|api.patiently|words.(worklist|rationale|plain|case|chair)|parts.(rationale.[a-z-]+|known|as-of|seen|sent|unhurry|unhurried))\.tsx?$/
// A tooth's screens show one picture in its states, and go as one: what they have in common is pressed once.
const OF_SCREENS =
  /src.(screens.(case|chair|hold-point|marks|new-case|no-work|record|review|share|visit)|parts.(canal-picture|keypad|lengths-board|reading-ruler)|panels.(emergency|hold-point|marks|readings))\b.*\.tsx?$/
const OF_PLANS =
  /src.(panels.plan|parts.(depth-board|canal-figures|order|plan|stop-table|tooth)|parts.(cautions|difference.difference-view|difficulty|element-size|fold|instrument|final-size|after-drawn)|words.(depth|figures|planning|drawing|expected|hold|plan|together)|store.(cache.plans|outbox.record)|walk.(own|walk))\b.*\.tsx?$/
const OF_IMAGES =
  /src.(panels.(images|marks|readings)|parts.(image-board|viewer|bounds|record-link|difference.compare)|marks|store.(images.(blackened|take|look-first|put-right)|chair.(part|chair))|walk|words.(images|marks|record|look))\b.*\.(tsx?|json)$/
// What a supervisor's first list shows too: it comes without the teeth.
const OF_REVIEWS =
  /src.(words.(review|card|emergency|visit|plan|planning|hold|drawing)|api.programme|store.(cache.(review|plans|systems)|device.clock|outbox.record)|panels.plan.waiting-plans|parts.(difficulty|known|step-answers)|units.addresses)\.tsx?$/

/** The worker itself, maps, smaller copies, and what a phone asks for once, when the app is put on its home screen. */
const NOT_KEPT = /(^sw\.js|\.map|\.br|\.gz|-512\.png)$/

/** Groups of screens that can do nothing without the server: a phone asks for them when they are opened. */
const ONLINE = ['people', 'practice', 'programs']

type Bundle = Record<string, Rolldown.OutputChunk | Rolldown.OutputAsset>

/** Scripts that those groups alone load. */
function onlineOnly(bundle: Bundle): ReadonlySet<string> {
  const others = new Set<string>()
  const reach = (file: string) => {
    const chunk = bundle[file]
    if (chunk?.type !== 'chunk' || others.has(file)) return
    if (chunk.isDynamicEntry && ONLINE.includes(chunk.name)) return
    others.add(file)
    for (const next of [...chunk.imports, ...chunk.dynamicImports]) reach(next)
  }
  const scripts = Object.values(bundle).filter((made) => made.type === 'chunk')
  for (const script of scripts) if (script.isEntry) reach(script.fileName)
  return new Set(scripts.map(({ fileName }) => fileName).filter((file) => !others.has(file)))
}

/** Files the worker keeps: all else that was built to be shown. The shell is asked for as `/`. */
function keptFiles(online: ReadonlySet<string>): string[] {
  return readdirSync(BUILT, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => relative(BUILT, join(entry.parentPath, entry.name)))
    .filter((file) => !file.startsWith('.vite') && !NOT_KEPT.test(file) && !online.has(file))
    .sort()
}

/** Builds the service worker after the app and gives it the files to keep, each with its digest, and that of them all. */
function serviceWorker(): Plugin {
  let online: ReadonlySet<string> = new Set()
  return {
    name: 'service-worker',
    apply: 'build',
    generateBundle(_, bundle) {
      online = onlineOnly(bundle)
    },
    async closeBundle() {
      const files = keptFiles(online)
      const digest = createHash('sha256')
      const kept: [string, string][] = []
      for (const file of files) {
        const bytes = readFileSync(join(BUILT, file))
        digest.update(file).update(bytes)
        kept.push([file === 'index.html' ? '/' : `/${file}`, createHash('sha256').update(bytes).digest('hex')])
      }
      const made = await build({
        configFile: false,
        logLevel: 'silent',
        publicDir: false,
        resolve: { alias },
        define: {
          __VERSION__: JSON.stringify(digest.digest('hex').slice(0, 12)),
          __FILES__: JSON.stringify(kept),
        },
        build: {
          write: false,
          target: 'es2022',
          rollupOptions: { input: join(root, 'src/worker/sw.ts'), output: { format: 'iife', entryFileNames: 'sw.js' } },
        },
      })
      const [first] = (Array.isArray(made) ? made : [made]) as { output: { code?: string }[] }[]
      const code = first?.output[0]?.code
      if (!code) throw new Error('the service worker was not built')
      writeFileSync(join(BUILT, 'sw.js'), code)
    },
  }
}

/** Lays a smaller copy beside every text, for the server to send as it lies. */
function smallerCopies(): Plugin {
  return {
    name: 'smaller-copies',
    apply: 'build',
    closeBundle: {
      // After the worker is written.
      order: 'post',
      sequential: true,
      handler() {
        for (const file of readdirSync(BUILT, { recursive: true, encoding: 'utf8' })) {
          if (!/\.(js|css|svg|webmanifest)$/.test(file)) continue
          const bytes = readFileSync(join(BUILT, file))
          writeFileSync(join(BUILT, `${file}.br`), brotliCompressSync(bytes))
          writeFileSync(join(BUILT, `${file}.gz`), gzipSync(bytes, { level: 9 }))
        }
      },
    },
  }
}

export default defineConfig({
  root,
  resolve: { alias },
  build: {
    target: 'es2022',
    modulePreload: { polyfill: false },
    outDir: BUILT,
    rolldownOptions: {
      output: {
        codeSplitting: {
          includeDependenciesRecursively: false,
          groups: [
            { name: 'of-lists', test: OF_LISTS },
            { name: 'of-reviews', test: OF_REVIEWS },
            { name: 'of-teeth', test: (id) => [OF_SCREENS, OF_PLANS, OF_IMAGES].some((each) => each.test(id)) },
          ],
        },
      },
    },
    assetsInlineLimit: 0,
    // One style sheet: what overrides what goes by its order, whichever screen came first.
    cssCodeSplit: false,
  },
  plugins: [serviceWorker(), smallerCopies()],
  server: { proxy: Object.fromEntries(OF_DJANGO.map((path) => [path, { target: DJANGO, changeOrigin: false }])) },
})
