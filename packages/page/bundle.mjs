// How the page's script becomes one text: the build writes it, the page test asks for it in memory.
import { dirname } from 'node:path'
import { fileURLToPath } from 'node:url'

/** Options for vite's `build`. */
export const pageBundle = {
  configFile: false,
  root: dirname(fileURLToPath(import.meta.url)),
  logLevel: 'warn',
  build: {
    lib: { entry: 'src/main.ts', formats: ['iife'], name: 'castwrightPage', fileName: () => 'page.js' },
    outDir: 'dist',
    // The declarations of the type check lie there too.
    emptyOutDir: false,
    target: 'es2022',
    // Modules of ours do nothing when they are loaded: what the page does not call, the clipper above all, stays out.
    rolldownOptions: { treeshake: { moduleSideEffects: false } }
  }
}
