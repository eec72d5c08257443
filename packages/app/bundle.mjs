// How the app becomes a folder of files: the build writes it, tests ask for it in a folder of their own.
import { readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { brotliCompressSync, constants } from 'node:zlib'

const here = dirname(fileURLToPath(import.meta.url))

// The clipper and the reader of path data declare nothing; they only define. What is not used of them is not sent.
const pruned = { treeshake: { moduleSideEffects: id => !/clipper2-ts|svg-pathdata/.test(id) } }

/**
 * Parts of the engine that few pieces need, by what stands for them in the app until they are loaded. The engine
 * imports them as it does elsewhere; here its import comes to the stand-in, and the stand-in's to the real one.
 */
const LATE = {
  'engine/src/shape/svg.ts': 'src/late/svg.ts',
  'engine/src/cast/cup-result.ts': 'src/late/cups.ts',
  'engine/src/cast/own-resin.ts': 'src/late/own.ts',
  'engine/src/cast/own-pigment.ts': 'src/late/own.ts',
  'engine/src/findings/label-figures.ts': 'src/late/own.ts',
  'engine/src/fits/drying-now.ts': 'src/late/drying.ts',
  'engine/src/cost/kits.ts': 'src/late/packs.ts',
  'engine/src/cost/mix-lots.ts': 'src/late/packs.ts',
  'engine/src/cost/packs.ts': 'src/late/packs.ts',
  'engine/src/fits/in-use.ts': 'src/late/supports.ts',
  'engine/src/fits/loaded-piece.ts': 'src/late/supports.ts',
  'engine/src/fits/supports.ts': 'src/late/supports.ts',
  'engine/src/findings/sags-in-use.ts': 'src/late/supports.ts',
  'engine/src/findings/slots-short.ts': 'src/late/supports.ts',
  'engine/src/findings/tips-over.ts': 'src/late/supports.ts',
  'engine/src/findings/cut-meets-stones.ts': 'src/late/stones.ts',
  'engine/src/findings/stones-large.ts': 'src/late/stones.ts',
  'engine/src/findings/stones-damp.ts': 'src/late/stones.ts',
  'engine/src/findings/stones-proud.ts': 'src/late/stones.ts',
  'engine/src/findings/stones-sink.ts': 'src/late/stones.ts',
  'engine/src/findings/hardware-face.ts': 'src/late/fittings.ts',
  'engine/src/findings/hardware-heat.ts': 'src/late/fittings.ts',
  'engine/src/findings/hardware-pocket.ts': 'src/late/fittings.ts',
  'engine/src/findings/glass-near.ts': 'src/late/fittings.ts',
  'engine/src/findings/insert-edge.ts': 'src/late/fittings.ts',
  'engine/src/findings/mains-trade.ts': 'src/late/fittings.ts',
  'engine/src/findings/pilot-wrong.ts': 'src/late/fittings.ts',
  'engine/src/findings/pocket-shallow.ts': 'src/late/fittings.ts',
  'engine/src/findings/screw-through.ts': 'src/late/fittings.ts',
  'engine/src/findings/sealed-in.ts': 'src/late/fittings.ts',
  'engine/src/findings/thread-short.ts': 'src/late/fittings.ts',
  'engine/src/cuts/for-machine.ts': 'src/late/machine.ts',
  'engine/src/findings/larger-than-machine.ts': 'src/late/machine.ts',
  'engine/src/findings/machine-checks.ts': 'src/late/machine.ts',
  'engine/src/stack/figure-text.ts': 'src/late/figures.ts',
  'engine/src/stack/figure-outline.ts': 'src/late/figures.ts'
}
const late = () => ({
  name: 'late parts of the engine',
  enforce: 'pre',
  resolveId(id, importer) {
    if (importer === undefined || !id.startsWith('.') || !importer.includes('/engine/src/')) return null
    const path = join(dirname(importer), id).replaceAll('\\', '/')
    const stand = Object.entries(LATE).find(([part]) => path.endsWith(part))?.[1]
    return stand === undefined ? null : join(here, stand)
  }
})

/**
 * What the worker starts with is one file: cut up by what parts loaded later share of it, it would be squeezed a
 * tenth less well.
 */
function startsWith() {
  const first = new Set()
  return {
    name: (id, chunks) => {
      if (first.size === 0)
        gather(first, of => chunks.getModuleInfo(of), join(here, 'src/worker/main.ts').replaceAll('\\', '/'))
      return first.has(id) ? 'engine' : null
    }
  }
}

function gather(found, infoOf, id) {
  if (found.has(id)) return
  found.add(id)
  for (const next of infoOf(id)?.importedIds ?? []) gather(found, infoOf, next)
}

const shared = {
  configFile: false,
  root: here,
  logLevel: 'warn',
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
  resolve: { conditions: ['source', 'browser', 'module', 'import', 'default'] },
  worker: {
    format: 'es',
    rolldownOptions: { ...pruned, output: { codeSplitting: { groups: [startsWith()] } } },
    plugins: () => [late()]
  }
}

/** Options for vite's `build`: the app. */
export const siteBundle = {
  ...shared,
  build: {
    outDir: 'dist/site',
    emptyOutDir: true,
    target: 'es2022',
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    manifest: 'files.json',
    chunkSizeWarningLimit: 2000,
    rolldownOptions: pruned
  }
}

/** Options for vite's `build`: the service worker, after the app, which it is told the files of. */
export const serviceBundle = files => ({
  ...shared,
  publicDir: false,
  define: { CASTWRIGHT_FILES: JSON.stringify(files) },
  build: {
    outDir: 'dist/site',
    emptyOutDir: false,
    target: 'es2022',
    lib: { entry: 'src/offline/service.ts', formats: ['es'], fileName: () => 'service.js' }
  }
})

/** Every file of the built app, as paths from its root. */
export function siteFiles(folder = join(here, 'dist', 'site')) {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter(f => f.isFile())
    .map(f =>
      join(f.parentPath, f.name)
        .slice(folder.length + 1)
        .replaceAll('\\', '/')
    )
    .filter(f => !f.endsWith('.br') && f !== 'files.json')
    .sort()
}

/** Writes each file once more, compressed, for the server to send. */
export function compressSite(folder = join(here, 'dist', 'site')) {
  for (const name of siteFiles(folder)) {
    if (!/\.(html|js|css|svg|webmanifest)$/.test(name)) continue
    const path = join(folder, name)
    const bytes = readFileSync(path)
    writeFileSync(
      `${path}.br`,
      brotliCompressSync(bytes, {
        params: { [constants.BROTLI_PARAM_QUALITY]: 11, [constants.BROTLI_PARAM_SIZE_HINT]: bytes.length }
      })
    )
  }
}
