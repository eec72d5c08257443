// How the command becomes one file: a process that reads one module starts several times sooner than one that
// reads three hundred; with the compiled code kept beside it, sooner still.
import { spawnSync } from 'node:child_process'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'

const here = dirname(fileURLToPath(import.meta.url))

/** Options for vite's `build`. */
export const commandBundle = {
  configFile: false,
  root: here,
  logLevel: 'warn',
  ssr: { noExternal: true, external: ['@castwright/page'] },
  build: {
    ssr: 'dist/src/main.js',
    outDir: 'dist',
    // What the type check wrote lies there too.
    emptyOutDir: false,
    target: 'node20',
    // Less to read and to parse when the process starts.
    minify: true,
    rolldownOptions: { output: { format: 'cjs', entryFileNames: 'castwright.cjs' } }
  }
}

/** Runs the command once and keeps what the engine of JavaScript has compiled; another version of it ignores that. */
export function keepCompiled(piece) {
  spawnSync(process.execPath, [join(here, 'bin', 'castwright.mjs'), 'check', piece], {
    stdio: 'ignore',
    env: { ...process.env, CASTWRIGHT_KEEP: '1' }
  })
}
