import { describe, expect, it } from 'vitest'
import { pieceSchema } from '../../src/piece/piece-schema.ts'
import { InputProblem } from '../../src/piece/problem.ts'
import { readPiece, readShop } from '../../src/piece/read.ts'
import { schemaPage } from '../../src/piece/schema-page.ts'
import { shopSchema } from '../../src/piece/shop-schema.ts'
import { plan } from '../../src/plan.ts'
import type { Json, Node } from './generate.ts'
import { open, places, resolved } from './generate.ts'
import { notNumbers } from './not-numbers.ts'
import { FILES, PIECES, SHOP } from './rich.ts'

/**
 * Every field of the rich documents, and every field they leave out, at both ends of its range and at each word
 * of its choice, one at a time. The whole is about 1500 plans: by default one in STRIDE is made, with
 * CASTWRIGHT_ENDS=all every one.
 */
const STRIDE = process.env['CASTWRIGHT_ENDS'] === 'all' ? 1 : 12

interface Change {
  readonly path: readonly (string | number)[]
  readonly value: Json
}

/** The values at the ends of what a node allows. */
function endsOf(page: Node, node: Node, path: readonly (string | number)[]): Change[] {
  const at = resolved(page, node)
  const low = at['x-quantity']?.min ?? at.minimum
  const high = at['x-quantity']?.max ?? at.maximum
  const ends = low !== undefined && high !== undefined ? [low, high] : []
  return [...ends, ...(at.enum ?? []), ...(at.type === 'boolean' ? [true, false] : [])].map(value => ({
    path,
    value
  }))
}

function changesOf(page: Node, document: Json): Change[] {
  return places(page, document).flatMap(place => [
    ...endsOf(page, place.node, place.path),
    ...open(page, place).flatMap(([key, node]) => endsOf(page, node, [...place.path, key]))
  ])
}

function changed(document: Json, { path, value }: Change): string {
  const copy = JSON.parse(JSON.stringify(document)) as Json
  let at = copy as Record<string | number, Json>
  for (const key of path.slice(0, -1)) at = at[key] as Record<string | number, Json>
  at[path[path.length - 1]!] = value
  return JSON.stringify(copy)
}

/** What is wrong with the plan of a piece in a shop; nothing when it is refused with a message. */
function faults(piece: string, shop: string): string[] {
  try {
    const input = { piece: readPiece(piece, 'piece'), shop: readShop(shop, 'shop').value, files: FILES }
    return notNumbers(plan(input, { asOf: '2026-11-01T08:00Z', effort: 'preview' }).plan)
  } catch (e) {
    if (e instanceof InputProblem) return []
    return [e instanceof Error ? (e.stack ?? e.message).split('\n').slice(0, 6).join('\n') : String(e)]
  }
}

const page = { piece: schemaPage(pieceSchema) as Node, shop: schemaPage(shopSchema) as Node }
const cases = [
  ...PIECES.map(p => ({ name: p.name, page: page.piece, document: p as unknown as Json, shop: false })),
  { name: 'a shop', page: page.shop, document: SHOP as unknown as Json, shop: true }
]

describe('a field at the end of its range', () => {
  it.each(cases)(
    'gives a plan of plain numbers or a message: $name',
    ({ page: of, document, shop }) => {
      const changes = changesOf(of, document)
      expect(changes.length).toBeGreaterThan(60)
      const bad = changes
        .filter((_, i) => i % STRIDE === 0)
        .flatMap((change, i) => {
          const text = changed(document, change)
          const own = i % 2 === 0 ? JSON.stringify(SHOP) : '{ "castwright": 1 }'
          return faults(shop ? JSON.stringify(PIECES[i % PIECES.length]) : text, shop ? text : own).map(
            f => `/${change.path.join('/')} ${JSON.stringify(change.value)}: ${f}`
          )
        })
      expect(bad.join('\n')).toBe('')
    },
    300_000
  )
})
