import type { Environment } from 'vitest/runtime'

/** Nothing yet: each file is given a window of its own (tests/frontend/window.ts), a thread none. */
export default {
  name: 'window-per-file',
  viteEnvironment: 'client',
  setup: () => ({ teardown: () => undefined }),
} satisfies Environment
