import { describe, expect, it } from 'vitest'
import type { Migration } from '../../src/piece/migrate.ts'
import { MIGRATIONS, migrate } from '../../src/piece/migrate.ts'
import { VERSION } from '../../src/piece/piece-schema.ts'
import { InputProblem } from '../../src/piece/problem.ts'
import { checkPiece, checkShop, readPiece, readShop } from '../../src/piece/read.ts'

/**
 * A sound document of every old version, written when that version was the newest and never changed since.
 * A new version puts one here before anything else: the guard below fails until it is there.
 */
const SAMPLES: Readonly<Record<'piece' | 'shop', Readonly<Record<number, Record<string, unknown>>>>> = {
  piece: {
    1: {
      castwright: 1,
      name: 'kept',
      outline: { rectangle: ['12 in', 200] },
      pours: [{ resin: 'medium', depth: '1/4 in' }]
    }
  },
  shop: { 1: { castwright: 1, climate: { night: '64 °F', day: 22 } } }
}

const check = { piece: checkPiece, shop: checkShop }

describe.each(['piece', 'shop'] as const)('old documents: the %s', kind => {
  it('has one migration for each version before this one, and no other', () => {
    expect(MIGRATIONS[kind].map(m => m.from)).toEqual(Array.from({ length: VERSION - 1 }, (_, i) => i + 1))
  })

  it('has a sample of each version, which reads to this day', () => {
    for (let v = 1; v <= VERSION; v++) {
      const sample = SAMPLES[kind][v]
      expect(sample, `no sample of version ${v}`).toBeDefined()
      const before = JSON.stringify(sample)
      const read = check[kind](sample, `version ${v}`)
      expect((read.document as { castwright: number }).castwright).toBe(VERSION)
      expect(JSON.stringify(sample), 'the document given stays as it was').toBe(before)
    }
  })

  it('of a version to come is refused, and says so', () => {
    const read = kind === 'piece' ? readPiece : readShop
    const text = JSON.stringify({ ...SAMPLES[kind][VERSION], castwright: VERSION + 1, somethingNew: true })
    const problem = caught(() => read(text, 'new.json'))
    // One problem: what a newer version means by its other keys is not for this one to judge.
    expect(problem.problems).toEqual([
      {
        path: '/castwright',
        found: `${VERSION + 1}`,
        allowed: `versions 1 to ${VERSION}: this file was written by a newer Castwright`,
        example: `"castwright": ${VERSION}`
      }
    ])
  })

  it.each([undefined, null, '1', 0, -1, 0.5, 1.5, true, [1], {}])('refuses %j as a version', version => {
    const problem = caught(() => check[kind]({ ...SAMPLES[kind][1], castwright: version }, 'x'))
    expect(problem.problems).toHaveLength(1)
    expect(problem.problems[0]).toMatchObject({
      path: '/castwright',
      allowed: `the version of the document, 1 to ${VERSION}`
    })
  })

  it.each([[null], [[]], ['text'], [5], [true]])('refuses %j as a document', document => {
    const problem = caught(() => check[kind](document, 'x'))
    expect(problem.problems[0]).toMatchObject({ path: '', allowed: 'a JSON object' })
  })
})

/** Three made-up versions show that the frame does what a real migration will need. */
const STEPS: readonly Migration[] = [
  {
    from: 1,
    about: 'deep becomes depth',
    run: ({ deep, ...rest }) => ({ ...rest, depth: deep })
  },
  { from: 2, about: 'a list', run: d => ({ ...d, depths: [d['depth']] }) }
]

describe('the frame of migrations', () => {
  it('runs those after the version of the document, in order, whatever order they stand in', () => {
    const wanted = { name: 'x', depth: '1 1/2 in', depths: ['1 1/2 in'], castwright: 3 }
    expect(migrate({ castwright: 1, name: 'x', deep: '1 1/2 in' }, 3, STEPS)).toEqual({ document: wanted })
    expect(migrate({ castwright: 2, name: 'x', depth: '1 1/2 in' }, 3, [...STEPS].reverse())).toEqual({
      document: wanted
    })
    expect(migrate(wanted, 3, STEPS)).toEqual({ document: wanted })
  })

  it('keeps units as typed and leaves the old document as it was', () => {
    const old = { castwright: 1, deep: '1 1/2 in', nested: { temperature: '70 °F' } }
    const moved = migrate(old, 3, STEPS) as { document: Record<string, unknown> }
    expect(moved.document['depth']).toBe('1 1/2 in')
    expect(moved.document['nested']).toEqual({ temperature: '70 °F' })
    expect(old).toEqual({ castwright: 1, deep: '1 1/2 in', nested: { temperature: '70 °F' } })
  })

  it('fails loudly when a migration is missing: that is our fault, not the maker’s', () => {
    expect(() => migrate({ castwright: 1 }, 3, STEPS.slice(1))).toThrow('no migration from version 1')
  })
})

function caught(run: () => unknown): InputProblem {
  try {
    run()
  } catch (e) {
    if (e instanceof InputProblem) return e
    throw e
  }
  throw new Error('nothing was refused')
}
