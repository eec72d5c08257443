// How the command becomes one file: a process that reads one module starts several times sooner than one that
// reads three hundred.
import { dirname } from 'node:path'
import { fileURLToPath } from 'node:url'

/** Options for vite's `build`. */
export const commandBundle = {
  configFile: false,
  root: dirname(fileURLToPath(import.meta.url)),
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
    rolldownOptions: { output: { entryFileNames: 'castwright.mjs' } }
  }
}
