import { defineConfig } from 'vitest/config'

// Tests run on the sources: the condition "source" resolves @castwright/engine to its TypeScript.
export default defineConfig({
  resolve: { conditions: ['source'] },
  ssr: { resolve: { conditions: ['source'] } },
  test: {
    include: ['packages/*/test/**/*.test.ts'],
    pool: 'threads',
    // The engine keeps no state: files of a worker share its modules, which saves loading it a hundred times.
    isolate: false,
    maxWorkers: 2,
    testTimeout: 60_000,
    env: { TZ: 'UTC', NO_COLOR: '1' }
  }
})
