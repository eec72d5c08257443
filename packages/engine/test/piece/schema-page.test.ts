import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import Ajv2020 from 'ajv/dist/2020.js'
import { describe, expect, it } from 'vitest'
import type { z } from 'zod'
import { pieceSchema } from '../../src/piece/piece-schema.ts'
import { readingSchema } from '../../src/piece/reading-schema.ts'
import { schemaPage } from '../../src/piece/schema-page.ts'
import { shopSchema } from '../../src/piece/shop-schema.ts'
import type { Chance } from '../stack/random.ts'
import { chance } from '../stack/random.ts'
import type { Json, Node } from './generate.ts'
import { places, valid } from './generate.ts'

const folder = join(import.meta.dirname, '../../../../docs/schema')
const documents = [
  { name: 'piece', schema: pieceSchema as z.ZodType, seeds: 200 },
  { name: 'shop', schema: shopSchema as z.ZodType, seeds: 150 },
  { name: 'reading', schema: readingSchema as z.ZodType, seeds: 150 }
]

// Ajv is a validator of its own: it reads the published page and knows nothing of zod.
const ajv = new Ajv2020.default({ strict: true, strictRequired: false, strictTypes: false, allErrors: false })
for (const word of ['x-quantity']) ajv.addKeyword(word)

type Issue = z.core.$ZodIssue

/** Whether zod refuses for the meaning alone: the range of a text with a unit, a day no calendar has. */
function meaningAlone(issues: readonly Issue[]): boolean {
  return issues.every(
    i =>
      (i.code === 'custom' && i.params?.['meaning'] === true) ||
      (i.code === 'invalid_union' && i.errors.some(list => list.length > 0 && meaningAlone(list)))
  )
}

/** What the reader says at the level a JSON Schema can say: meaning is checked after it. */
function accepts(schema: z.ZodType, document: unknown): boolean {
  const result = schema.safeParse(document)
  return result.success || meaningAlone(result.error.issues)
}

const NASTY: readonly Json[] = [
  null, true, false, 0, -1, 1.5, 1e9, -1e9, 1e308, '', ' ', 'nonsense', '5', '5 furlongs', '1 1/0 in', '-3 mm',
  '1e3 mm', '12 mm ', '1,5 mm', '70 °F', '24 h', '2026-13-01', '2026-01-01', [], {}, [1, 2], [[0, 0]], { a: 1 }
] // biome-ignore format: a list of words

/** One thing made wrong (or not): the value at a place replaced, left out, or a key put in. */
function mutated(page: Node, document: Json, c: Chance): Json {
  const copy = JSON.parse(JSON.stringify(document)) as Json
  const all = places(page, copy)
  const { path, node, value } = c.pick(all)
  const key = path[path.length - 1]
  const set = (next: Json | undefined) => {
    if (key === undefined) return next === undefined ? null : next
    let parent = copy as Record<string | number, Json>
    for (const k of path.slice(0, -1)) parent = parent[k] as Record<string | number, Json>
    if (next !== undefined) parent[key] = next
    else if (Array.isArray(parent)) parent.splice(key as number, 1)
    else delete parent[key]
    return copy
  }
  switch (c.whole(0, 5)) {
    case 0:
      return set(undefined)
    case 1:
      if (value !== null && typeof value === 'object' && !Array.isArray(value)) {
        return set({
          ...value,
          [c.pick(['dept', 'x', 'colour', '', 'toString', 'constructor'])]: c.pick(NASTY)
        })
      }
      return set(c.pick(NASTY))
    case 2: {
      const low = node['x-quantity']?.min ?? node.minimum
      const high = node['x-quantity']?.max ?? node.maximum
      if (low === undefined || high === undefined) return set(c.pick(NASTY))
      return set(
        c.pick([low, high, low - 0.001, high + 0.001, low - 1e6, high + 1e6, (low + high) / 2 + 0.37])
      )
    }
    case 3:
      if (Array.isArray(value)) return set([...value, ...value, ...value].slice(0, c.whole(0, 9)))
      if (typeof value === 'string')
        return set(c.pick([`${value} `, `${value}x`, value.slice(1), value.repeat(40)]))
      return set(c.pick(NASTY))
    case 4:
      return set(JSON.parse(JSON.stringify(c.pick(all).value)) as Json)
    default:
      return set(c.pick(NASTY))
  }
}

describe.each(documents)('the published schema of a $name', ({ name, schema, seeds }) => {
  const page = schemaPage(schema)
  const published = ajv.compile(page)

  it(`stands in docs/schema/${name}.schema.json as this build makes it`, () => {
    const file = join(folder, `${name}.schema.json`)
    const now = `${JSON.stringify(page, null, 1)}\n`
    if (process.env['SCHEMA'] === 'write') {
      mkdirSync(folder, { recursive: true })
      writeFileSync(file, now)
    }
    expect(existsSync(file) ? readFileSync(file, 'utf8') : '', 'stale: run with SCHEMA=write').toBe(now)
  })

  it(`gives ${seeds} documents drawn from it that the reader takes as well`, () => {
    for (let seed = 1; seed <= seeds; seed++) {
      const document = valid(page as Node, page as Node, chance(seed), { optional: 0.3, depth: 3 })
      expect(published(document), `seed ${seed}: ${ajv.errorsText(published.errors)}`).toBe(true)
      expect(accepts(schema, document), `seed ${seed}: ${JSON.stringify(document)}`).toBe(true)
    }
  })

  it(`takes and refuses the same as the reader of ${seeds} × 4 documents with one thing changed`, () => {
    let refused = 0
    for (let seed = 1; seed <= seeds * 4; seed++) {
      const c = chance(seed + 10_000)
      const document = valid(page as Node, page as Node, c, { optional: 0.2, depth: 2 })
      const changed = mutated(page as Node, document, c)
      const said = published(changed)
      if (!said) refused++
      expect(
        accepts(schema, changed),
        `seed ${seed}: ${ajv.errorsText(published.errors)} ${JSON.stringify(changed)}`
      ).toBe(said)
    }
    // The changes must bite, and must not all bite.
    expect(refused).toBeGreaterThan(seeds)
    expect(refused).toBeLessThan(seeds * 3.8)
  })

  it('has an example at every place that its own schema takes', () => {
    let count = 0
    ajv.addSchema({ ...page, $id: name })
    const walk = (at: unknown, pointer: string): void => {
      if (at === null || typeof at !== 'object') return
      const node = at as Node & { examples?: unknown[] }
      // A key of a document may be called `examples` too; a schema node says what it is.
      if (Array.isArray(node.examples) && ['$ref', 'type', 'anyOf', 'oneOf'].some(k => k in node)) {
        const check = ajv.compile({ $ref: `${name}#${pointer}` })
        for (const example of node.examples) {
          const said = `${pointer} ${JSON.stringify(example)}: ${ajv.errorsText(check.errors)}`
          expect(check(example), said).toBe(true)
          count++
        }
      }
      for (const [key, inner] of Object.entries(at)) {
        if (key !== 'examples') walk(inner, `${pointer}/${key.replaceAll('~', '~0').replaceAll('/', '~1')}`)
      }
    }
    walk(page, '')
    expect(count).toBeGreaterThan(10)
  })
})
