import type { Json } from '../worker/document.ts'
import { loadCups } from './cups.ts'
import { loadFigures } from './figures.ts'
import { loadMachine } from './machine.ts'
import { loadSvg } from './svg.ts'

/** Loads what the engine stands without until these documents need it; see `late` in bundle.mjs. */
export async function loadNeeds(ask: {
  readonly kind: string
  readonly files?: Readonly<Record<string, string>>
  readonly shop?: Json | null
  readonly document?: Json
}): Promise<void> {
  const { kind, files, shop, document } = ask
  await Promise.all([
    kind === 'cup' || holdsCups(shop) ? loadCups() : null,
    files !== undefined && Object.keys(files).length > 0 ? loadSvg() : null,
    kind === 'cuts' || shop?.['machine'] !== undefined || document?.['pins'] !== undefined
      ? loadMachine()
      : null,
    outlined(document) ? loadFigures() : null
  ])
}

/** The rest of what may be needed, once the first plan is there: a page that is open must go on without network. */
export async function loadAll(): Promise<void> {
  await Promise.all([loadCups(), loadSvg(), loadMachine(), loadFigures()])
}

// Figures of outlines. The document may be anything yet: it is checked later.
function outlined(document: Json | undefined): boolean {
  const markings = document?.['markings']
  return Array.isArray(markings) && markings.some((m: Json | null) => m?.['figures'] === 'outline')
}

// The shop may be anything yet: it is checked later.
function holdsCups(shop: Json | null | undefined): boolean {
  const resins = shop?.['resins']
  if (!Array.isArray(resins)) return false
  return resins.some((r: Json | null) => {
    const tests: unknown = r?.['cupTests']
    return Array.isArray(tests) && tests.length > 0
  })
}
