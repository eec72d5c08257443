import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { machiningOf } from '../../src/cuts/operation/machining.ts'
import { findingsOfCuts } from '../../src/cuts-plan.ts'
import type { PieceDocument } from '../../src/piece/piece-schema.ts'
import { InputProblem } from '../../src/piece/problem.ts'
import { checkPiece, checkShop } from '../../src/piece/read.ts'
import type { ShopDocument } from '../../src/piece/shop-schema.ts'
import { plan } from '../../src/plan.ts'
import { programSet } from '../../src/programs/program-set.ts'
import { proveSet } from '../../src/programs/prove-set.ts'
import type { Varied } from './varied-example.ts'
import { variedExample } from './varied-example.ts'

/** Changed examples whose programs are made; more for the heavy counts. Every so many of them are proved too. */
const COUNT = Number(process.env['CASTWRIGHT_VARIED'] ?? 18)
const PROVED_EVERY = 12

const folder = join(import.meta.dirname, '../../../../examples')
const text = (name: string) => readFileSync(join(folder, name), 'utf8')
const shop = JSON.parse(text('workshop.shop.json')) as ShopDocument
const files = { 'heron-table.svg': text('heron-table.svg') }
const EXAMPLES = ['meadow-boards', 'saltmarsh-panel', 'heron-table'] as const

/** What is wrong with the programs of a changed example; null where it is refused with a message, or stopped. */
function faults({ piece, shop: ground }: Varied, proved: boolean): string[] | null {
  let planned: ReturnType<typeof plan>
  const input = { shop: checkShop(ground, 'shop').value, files, effort: 'preview' as const }
  try {
    const options = { asOf: '2026-11-02T08:00:00Z', effort: 'preview' as const }
    planned = plan({ ...input, piece: checkPiece(piece, 'piece') }, options)
  } catch (e) {
    if (e instanceof InputProblem) return null
    throw e
  }
  const { findings } = planned.plan
  const machining = machiningOf(planned.work)
  if (machining === null) return null
  const set = programSet(machining)
  if (findings.some(f => f.severity === 'stop')) return null
  if (!proved) return []
  // Stones that the plan has told of already are told once more: that a cutter runs into them is known.
  const told = findings.some(f => f.id === 'stones-proud' || f.id === 'cut-meets-stones')
  return findingsOfCuts(set, proveSet(set))
    .filter(f => f.severity === 'stop' && f.id !== 'cut-not-made' && !(told && f.id === 'stones-in-path'))
    .map(f => `${f.id}: ${f.says}`)
}

test.for(EXAMPLES)(
  `%s, changed by chance: where the plan has no stop its programs are written and prove clean, ${COUNT} in all`,
  { timeout: 60_000 },
  name => {
    const example = JSON.parse(text(`${name}.piece.json`)) as PieceDocument
    let made = 0
    let proofs = 0
    const wrong: string[] = []
    const count = Math.ceil(COUNT / EXAMPLES.length)
    for (let seed = 1; seed <= count; seed++) {
      const varied = variedExample(example, shop, seed)
      const proved = made % (PROVED_EVERY / 2) === 1 && proofs * PROVED_EVERY < seed
      try {
        const found = faults(varied, proved)
        if (found === null) continue
        made++
        if (proved) proofs++
        wrong.push(...found.map(f => `seed ${seed} (${varied.changes.join('; ')}): ${f}`))
      } catch (e) {
        wrong.push(`seed ${seed} (${varied.changes.join('; ')}): ${e instanceof Error ? e.message : e}`)
      }
    }
    expect(wrong).toEqual([])
    expect(made).toBeGreaterThan(0.2 * count)
    expect(proofs).toBeGreaterThan(0)
  }
)
