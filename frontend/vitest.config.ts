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
  resolve: { alias: { '@': join(root, 'src') } },
  server: { fs: { allow: [join(root, '..')] } },
  test: {
    environment: 'happy-dom',
    dir: tests,
    setupFiles: [join(tests, 'setup.ts')],
    restoreMocks: true,
    sequence: { shuffle: true },
  },
})
