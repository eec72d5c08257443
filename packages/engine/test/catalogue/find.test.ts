import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { CATALOGUE, type CatalogueKind, find, nearestIds } from '../../src/catalogue/find.ts'
import { editDistance, tokensOf } from '../../src/catalogue/word.ts'

const kinds = Object.keys(CATALOGUE) as CatalogueKind[]

describe('finding a row', () => {
  it('finds every row by its id, however it is written', () => {
    for (const kind of kinds) {
      for (const row of CATALOGUE[kind]) {
        expect(find(kind, row.id)).toBe(row)
        expect(find(kind, ` ${row.id.toUpperCase().replaceAll('-', '  ')} `)).toBe(row)
      }
    }
  })

  it('finds every row by its name', () => {
    for (const kind of kinds) {
      for (const row of CATALOGUE[kind]) expect(find(kind, row.name), `${kind} ${row.name}`).toBe(row)
    }
  })

  it('finds a timber as a maker would say it', () => {
    expect(find('timber', 'black walnut')?.id).toBe('walnut-black')
    expect(find('timber', 'White Oak')?.id).toBe('oak-white')
    expect(find('timber', 'red elm')?.id).toBe('elm-slippery')
    expect(find('timber', 'Juglans regia')?.id).toBe('walnut-european')
    expect(find('timber', 'teak')?.id).toBe('teak')
    expect(find('timber', 'khaya')?.id).toBe('mahogany-african')
    expect(find('hardware', 'Quartz clock movement')?.id).toBe('quartz-movement')
    expect(find('board', 'melamine-faced particleboard 18 mm')?.id).toBe('melamine-particleboard-18')
  })

  it('finds nothing where the word fits none or several', () => {
    expect(find('timber', 'oak')).toBeNull()
    expect(find('timber', 'hard maple')).toBeNull() // sugar and black maple
    expect(find('timber', 'Pseudotsuga menziesii')).toBeNull() // coast and interior
    expect(find('timber', 'unobtainium')).toBeNull()
    expect(find('timber', '')).toBeNull()
    expect(find('timber', ' -- ')).toBeNull()
  })

  it('has the rows that the documents take when nothing is said', () => {
    expect(find('board', 'melamine-particleboard-18')).not.toBeNull()
    expect(find('liner', 'release-tape')).not.toBeNull()
    expect(find('room', 'heated-room')).not.toBeNull()
    expect(find('resin', 'medium')).not.toBeNull()
    expect(find('resin', 'thin')).not.toBeNull()
  })
})

describe('the nearest rows', () => {
  it('offers what was meant', () => {
    expect(nearestIds('timber', 'wallnut', 2)).toEqual(['walnut-black', 'walnut-european'])
    expect(nearestIds('timber', 'walnut blakc', 1)).toEqual(['walnut-black'])
    expect(nearestIds('timber', 'white aok', 1)).toEqual(['oak-white'])
    expect(nearestIds('timber', 'hard maple', 2).toSorted()).toEqual(['maple-black', 'maple-sugar'])
    expect(nearestIds('timber', 'oka', 5).every(id => /(^|-)oak(-|$)/.test(id))).toBe(true)
    expect(nearestIds('pigment', 'whitepaste', 1)).toEqual(['white-paste'])
    expect(nearestIds('stone', 'gravel', 1)).toEqual(['river-gravel'])
    expect(nearestIds('coat', 'hard wax oil', 1)).toEqual(['hardwax-oil'])
  })

  it('puts the row itself first', () => {
    for (const kind of kinds) {
      for (const row of CATALOGUE[kind]) expect(nearestIds(kind, row.id, 1), row.id).toEqual([row.id])
    }
  })

  it('survives a letter lost from any word of six and more in a timber’s id', () => {
    for (const row of CATALOGUE.timber) {
      for (const word of tokensOf(row.id).filter(w => w.length >= 6)) {
        const typo = row.id.replace(word, word.slice(0, 2) + word.slice(3))
        expect(nearestIds('timber', typo, 2), typo).toContain(row.id)
      }
    }
  })

  it('gives as many as asked for, without doubles, whatever the word', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...kinds),
        fc.string({ maxLength: 120 }),
        fc.nat(6),
        (kind, word, count) => {
          const ids = nearestIds(kind, word, count)
          expect(ids).toHaveLength(Math.min(count, CATALOGUE[kind].length))
          expect(new Set(ids).size).toBe(ids.length)
        }
      ),
      { seed: 20260103, numRuns: 200 }
    )
  })

  it('refuses a count that is none', () => {
    expect(() => nearestIds('timber', 'oak', -1)).toThrow(/-1/)
    expect(() => nearestIds('timber', 'oak', 1.5)).toThrow(/1.5/)
    expect(() => nearestIds('timber', 'oak', Number.NaN)).toThrow(/NaN/)
  })
})

describe('edit distance', () => {
  // The textbook pair, and the laws of a distance on seeded words.
  it('is 3 from kitten to sitting', () => {
    expect(editDistance('kitten', 'sitting')).toBe(3)
    expect(editDistance('', 'abc')).toBe(3)
    expect(editDistance('abc', '')).toBe(3)
    expect(editDistance('oka', 'oak')).toBe(1)
  })

  /** Slow and obvious: every way of making the last step. */
  function obvious(a: string, b: string): number {
    if (a === '' || b === '') return a.length + b.length
    const [x, y] = [a.slice(0, -1), b.slice(0, -1)]
    const ways = [obvious(x, b) + 1, obvious(a, y) + 1, obvious(x, y) + (a.at(-1) === b.at(-1) ? 0 : 1)]
    if (a.length > 1 && b.length > 1 && a.at(-1) === b.at(-2) && a.at(-2) === b.at(-1)) {
      ways.push(obvious(a.slice(0, -2), b.slice(0, -2)) + 1)
    }
    return Math.min(...ways)
  }

  it('is what trying every way gives, nothing to itself, the same both ways', () => {
    const word = fc.string({ unit: fc.constantFrom('a', 'b', 'c'), maxLength: 6 })
    fc.assert(
      fc.property(word, word, (a, b) => {
        expect(editDistance(a, a)).toBe(0)
        expect(editDistance(a, b)).toBe(editDistance(b, a))
        expect(editDistance(a, b)).toBe(obvious(a, b))
      }),
      { seed: 20260104, numRuns: 200 }
    )
  })

  it('reads words without case, accents or punctuation', () => {
    expect(tokensOf('Éolienne, (Größe) M10×1')).toEqual(['eolienne', 'große', 'm10', '1'])
  })
})
