import { describe, expect, it } from 'vitest'
import { pieceSchema } from '../../src/piece/piece-schema.ts'
import { InputProblem } from '../../src/piece/problem.ts'
import { readPiece, readReadings, readShop } from '../../src/piece/read.ts'
import { readingSchema } from '../../src/piece/reading-schema.ts'
import { schemaPage } from '../../src/piece/schema-page.ts'
import { shopSchema } from '../../src/piece/shop-schema.ts'
import type { Planned } from '../../src/plan.ts'
import { plan } from '../../src/plan.ts'
import { buyCsv } from '../../src/sheets/buy-csv.ts'
import { page } from '../../src/sheets/page.ts'
import { runSheetHtml } from '../../src/sheets/run-sheet-html.ts'
import { runSheetMarkdown } from '../../src/sheets/run-sheet-md.ts'
import type { PlanInput } from '../../src/work.ts'
import { chance } from '../stack/random.ts'
import type { Json, Node } from './generate.ts'
import { spoiledText, spoiledTree, withKey } from './mutation.ts'
import { notNumbers } from './not-numbers.ts'
import { FILES, PIECES, READINGS, SHOP } from './rich.ts'

/**
 * Documents spoiled by lot. Each must end as an InputProblem a maker can act on, or as a plan without a number
 * that is none. CASTWRIGHT_MUTATIONS sets how many, CASTWRIGHT_MUTATION_SEED where to begin (to see one again:
 * set it to the seed that was printed and the number to 1).
 */
const COUNT = Number(process.env['CASTWRIGHT_MUTATIONS'] ?? 2000)
const FIRST = Number(process.env['CASTWRIGHT_MUTATION_SEED'] ?? 1)
/** Longest one case may take, ms. */
const MOST_MS = 5000

const pages = {
  piece: schemaPage(pieceSchema) as Node,
  shop: schemaPage(shopSchema) as Node,
  reading: schemaPage(readingSchema) as Node
}
const lines = (records: readonly unknown[]) => records.map(r => `${JSON.stringify(r)}\n`).join('')
const ASIDE = {
  shop: readShop('{ "castwright": 1 }', 'shop').value,
  own: readShop(JSON.stringify(SHOP), 'shop').value,
  readings: readReadings(lines(READINGS), 'readings').readings
}

interface Texts {
  readonly piece: string
  readonly shop: string | null
  readonly readings: string | null
}

/** The documents of one seed, one of them spoiled. */
function drawn(seed: number): Texts {
  const c = chance(seed)
  // The last is the quickest to plan: it comes up twice as often.
  const base = c.pick([...PIECES, PIECES[PIECES.length - 1]!]) as unknown as Json
  const text = JSON.stringify(base)
  const twice = (page: Node, d: Json) => {
    let out = spoiledTree(page, d, c)
    while (c.is(0.35)) out = spoiledTree(page, out, c)
    return out
  }
  const which = c.next()
  if (which < 0.6) return { piece: JSON.stringify(twice(pages.piece, base)), shop: null, readings: null }
  if (which < 0.68)
    return { piece: JSON.stringify(withKey(pages.piece, base, c)), shop: null, readings: null }
  if (which < 0.8) return { piece: spoiledText(text, c), shop: null, readings: null }
  if (which < 0.93) {
    const shop = c.is(0.2)
      ? spoiledText(JSON.stringify(SHOP), c)
      : JSON.stringify(twice(pages.shop, SHOP as unknown as Json))
    return { piece: text, shop, readings: null }
  }
  const records = READINGS.map(r => (c.is(0.5) ? spoiledTree(pages.reading, r as Json, c) : r))
  return { piece: text, shop: null, readings: c.is(0.2) ? spoiledText(lines(records), c) : lines(records) }
}

/** What the sheets of a plan say that is no word: what a maker typed is left out by its quotes. */
function inSheets(planned: Planned): string[] {
  const sheets = {
    page: page(planned, { script: '', style: '', fonts: [] }),
    'run sheet': runSheetMarkdown(planned),
    'run sheet page': runSheetHtml(planned),
    'buy list': buyCsv(planned.plan)
  }
  return Object.entries(sheets).flatMap(([name, text]) => {
    const at = text.search(/\bNaN\b|\bInfinity\b|\bundefined\b|\[object /)
    return at < 0 ? [] : [`${name}: ${text.slice(Math.max(0, at - 80), at + 80)}`]
  })
}

/** What is unclear about a message. */
function unclear(e: InputProblem): string[] {
  const out: string[] = []
  if (e.problems.length === 0) out.push('no problem in it')
  for (const p of e.problems) {
    const line = `${p.path}: ${p.found}; ${p.allowed}; ${p.example}`
    if (p.found === '' || p.allowed === '') out.push(`empty: ${line}`)
    if (line.length > 420) out.push(`${line.length} characters: ${line}`)
    if (/\[object|\bundefined\b(?!")/.test(`${p.found.replace(/"[^"]*"/g, '')}; ${p.allowed}`)) out.push(line)
  }
  return out
}

type Outcome = 'refused' | 'planned'

/** The documents of a seed as a plan takes them. @throws InputProblem for most of them */
export function drawnInput(seed: number): PlanInput {
  const texts = drawn(seed)
  const shop =
    texts.shop === null ? (seed % 2 === 0 ? ASIDE.shop : ASIDE.own) : readShop(texts.shop, 'shop').value
  const readings =
    texts.readings === null ? ASIDE.readings : readReadings(texts.readings, 'readings').readings
  return { piece: readPiece(texts.piece, 'piece'), shop, readings, files: FILES }
}

function tried(seed: number): { outcome: Outcome; faults: string[]; ms: number } {
  const begun = performance.now()
  const faults: string[] = []
  let outcome: Outcome = 'refused'
  try {
    const planned = plan(drawnInput(seed), { asOf: '2026-11-01T08:00+01:00', effort: 'preview' })
    const { plan: made } = planned
    outcome = 'planned'
    // Every so often one is drawn and written out as well: no output holds what is no number.
    if (seed % 25 === 0) faults.push(...inSheets(planned))
    // What a maker typed may hold any word; what the engine says about it may not.
    faults.push(...notNumbers({ ...made, name: '' }))
  } catch (e) {
    if (e instanceof InputProblem) faults.push(...unclear(e))
    else
      faults.push(e instanceof Error ? (e.stack ?? e.message).split('\n').slice(0, 7).join('\n') : String(e))
  }
  const ms = performance.now() - begun
  if (ms > MOST_MS) faults.push(`took ${ms} ms`)
  return { outcome, faults, ms }
}

/** The tests over every second seed from the first one (0) or the one after (1): two files, so that two workers share them. */
export function spoiledByLot(half: 0 | 1): void {
  describe('documents spoiled by lot', () => {
    it('are sound before they are spoiled', () => {
      for (const document of PIECES) {
        const piece = readPiece(JSON.stringify(document), 'piece')
        const { plan: made } = plan(
          { piece, shop: ASIDE.own, readings: ASIDE.readings, files: FILES },
          { asOf: '2026-11-01T08:00+01:00', effort: 'preview' }
        )
        expect(notNumbers(made)).toEqual([])
      }
    })

    it(
      `end as a clear message or as a plan of plain numbers, every second of ${COUNT} from seed ${FIRST + half}`,
      () => {
        const counts = { refused: 0, planned: 0 }
        const bad: string[] = []
        let slowest = { seed: 0, ms: 0 }
        for (let seed = FIRST + half; seed < FIRST + COUNT; seed += 2) {
          const { outcome, faults, ms } = tried(seed)
          counts[outcome]++
          if (ms > slowest.ms) slowest = { seed, ms }
          if (faults.length > 0) bad.push(`seed ${seed}: ${faults.slice(0, 3).join('\n  ')}`)
        }
        expect(
          bad.slice(0, 40).join('\n\n'),
          `${bad.length} of ${COUNT}; slowest ${slowest.seed}: ${slowest.ms} ms; ${JSON.stringify(counts)}`
        ).toBe('')
        if (COUNT >= 100) {
          expect(counts.refused).toBeGreaterThan(COUNT * 0.1)
          expect(counts.planned).toBeGreaterThan(COUNT * 0.1)
        }
      },
      60_000 + COUNT * 60
    )
  })
}
