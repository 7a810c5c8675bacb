import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { defineConfig, type Plugin } from 'vitest/config'
import { awaits } from './vitest.awaits.ts'

const root = fileURLToPath(new URL('.', import.meta.url))
const tests = join(root, '../tests/frontend')

/** The tests lie outside this folder; their packages are this folder's. */
const packagesOfTheApp: Plugin = {
  name: 'packages-of-the-app',
  enforce: 'pre',
  resolveId(source, importer) {
    if (!importer?.startsWith(join(root, '../tests')) || /^[./]|^@\//.test(source)) return null
    return this.resolve(source, join(root, 'src/main.tsx'), { skipSelf: true })
  },
}

export default defineConfig({
  root,
  plugins: [packagesOfTheApp, awaits],
  resolve: {
    alias: {
      '@': join(root, 'src'),
      // It looks for the page's body when it is loaded, so it is loaded anew for each file: its one-file form.
      '@testing-library/dom': join(root, 'node_modules/@testing-library/dom/dist/@testing-library/dom.esm.js'),
    },
  },
  server: { fs: { allow: [join(root, '..')] } },
  test: {
    environment: join(root, 'vitest.window.ts'),
    dir: tests,
    setupFiles: [join(tests, 'setup.ts')],
    server: { deps: { inline: [/@testing-library/] } },
    restoreMocks: true,
    // For what never comes; nothing is judged by time.
    testTimeout: 120_000,
    sequence: { shuffle: true },
    // Starting a thread, a window and every package for each file took two thirds of the time.
    pool: 'threads',
    isolate: false,
    maxWorkers: '100%',
  },
})
