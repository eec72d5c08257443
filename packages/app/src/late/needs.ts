import type { Json } from '../worker/document.ts'
import { loadCups } from './cups.ts'
import { loadDrying } from './drying.ts'
import { loadFigures } from './figures.ts'
import { loadFittings } from './fittings.ts'
import { loadMachine } from './machine.ts'
import { loadPigments, loadResins } from './own.ts'
import { loadPacks } from './packs.ts'
import { loadStones } from './stones.ts'
import { loadSupports } from './supports.ts'
import { loadSvg } from './svg.ts'

/** Loads what the engine stands without until these documents need it; see `late` in bundle.mjs. */
export async function loadNeeds(ask: {
  readonly kind: string
  readonly files?: Readonly<Record<string, string>>
  readonly shop?: Json | null
  readonly document?: Json
  readonly readings?: readonly Json[]
}): Promise<void> {
  const { kind, files, shop, document, readings } = ask
  await Promise.all([
    kind === 'cup' || holdsCups(shop) ? loadCups() : null,
    files !== undefined && Object.keys(files).length > 0 ? loadSvg() : null,
    ['cuts', 'days', 'orders'].includes(kind) ||
    shop?.['machine'] !== undefined ||
    document?.['pins'] !== undefined
      ? loadMachine()
      : null,
    kind === 'cup' || some(shop, 'resins') ? loadResins() : null,
    some(shop, 'resins') || some(shop, 'prices') ? loadPacks() : null,
    kind === 'card' || some(shop, 'cards') ? loadPigments() : null,
    readings?.some(r => r?.['kind'] === 'weight') ? loadDrying() : null,
    document?.['supports'] !== undefined ? loadSupports() : null,
    numbered(document) ? loadFigures() : null,
    stony(document) ? loadStones() : null,
    some(document, 'hardware') ? loadFittings() : null
  ])
}

/** The rest of what may be needed, once the first plan is there: a page that is open must go on without network. */
export async function loadAll(): Promise<void> {
  await Promise.all([
    loadCups(),
    loadSvg(),
    loadMachine(),
    loadFigures(),
    loadResins(),
    loadPigments(),
    loadDrying(),
    loadPacks(),
    loadStones(),
    loadFittings(),
    loadSupports()
  ])
}

// Whether a document lists any of them.
function some(document: Json | null | undefined, list: string): boolean {
  const found = document?.[list]
  return Array.isArray(found) && found.length > 0
}

// Scales with figures. The document may be anything yet: it is checked later.
function numbered(document: Json | undefined): boolean {
  const markings = document?.['markings']
  return Array.isArray(markings) && markings.some((m: Json | null) => m?.['numerals'] !== undefined)
}

// Pours with stones in them. The document may be anything yet.
function stony(document: Json | undefined): boolean {
  const pours = document?.['pours']
  return Array.isArray(pours) && pours.some((p: Json | null) => p?.['stones'] !== undefined)
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
