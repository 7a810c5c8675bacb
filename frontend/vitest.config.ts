import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { defineConfig } from 'vitest/config'

const root = fileURLToPath(new URL('.', import.meta.url))

export default defineConfig({
  root,
  resolve: { alias: { '@': join(root, 'src') } },
  server: { fs: { allow: [join(root, '..')] } },
  test: {
    environment: 'happy-dom',
    dir: join(root, '../tests/frontend'),
    setupFiles: [join(root, '../tests/frontend/setup.ts')],
    restoreMocks: true,
    sequence: { shuffle: true },
  },
})
