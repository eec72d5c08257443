import { describe, expect, it } from 'vitest'
import type { Clipping, Pasted } from '../../src/draw/paste.ts'
import { clippingText, copied, pasted, readClipping } from '../../src/draw/paste.ts'
import { entriesOf } from '../../src/piece/entry.ts'
import { applyPatch, invertPatch } from '../../src/piece/patch.ts'
import type { PieceDocument } from '../../src/piece/piece-schema.ts'
import { checkPiece } from '../../src/piece/read.ts'
import { translate } from '../../src/shape/transform.ts'
import { chance } from '../stack/random.ts'
import { FILES, regionFor } from './forms.ts'
import { symmetricDifference } from './same-region.ts'

const piece: PieceDocument = {
  castwright: 1,
  name: 'Invented',
  outline: { rectangle: [400, 300] },
  timbers: [
    {
      id: 'near',
      species: 'ash-white',
      thickness: 20,
      outline: { file: 'a.svg', part: 'p', at: ['1 in', 0] },
      underside: { union: [{ file: 'a.svg' }] }
    },
    { species: 'ash-white', thickness: 20, outline: { circle: 90 } }
  ],
  pours: [
    { id: 'clear', resin: 'deep', fill: 'timber' },
    {
      id: 'gold',
      kind: 'inlay',
      resin: 'thin',
      fill: 'cut',
      into: ['pocket', 'line'],
      stones: [
        { kind: 'river-gravel', zone: { circle: 9 } },
        { kind: 'river-gravel', placed: [{ at: [4, 5], size: [1, 2, 3] }] }
      ]
    }
  ],
  cuts: [
    { id: 'pocket', face: 'back', shape: { rectangle: [61, 61], at: [3, 4] }, depth: 12, for: 'movement' },
    { id: 'line', kind: 'groove', face: 'front', along: { path: 'M0 0 L 20 -30' }, width: 3, depth: 2 }
  ],
  hardware: [{ id: 'movement', kind: 'quartz-movement', at: [0, 0], in: 'pocket', castIn: 'clear' }],
  markings: [
    { id: 'scale', radial: { radius: 90, length: 8, at: [0, 90] }, numerals: [{ text: '3', at: [70, 0] }] }
  ],
  edges: [{ profile: 'chamfer', size: 3 }]
}
const bare: PieceDocument = {
  castwright: 1,
  name: 'Other',
  outline: { circle: 300 },
  pours: [{ resin: 'deep', depth: 9 }]
}

const clip = (kind: Clipping['kind'], index: number): Clipping => {
  const read = readClipping(clippingText(copied(piece, kind, index, FILES)!))
  expect(read).not.toHaveProperty('problem')
  return read as Clipping
}
const into = (document: PieceDocument, got: Pasted) => {
  expect(got).not.toHaveProperty('problem')
  const done = got as Exclude<Pasted, { problem: string }>
  const next = applyPatch(document, done.patch)
  entriesOf(checkPiece(next, 'test').value, 'test')
  expect(applyPatch(next, invertPatch(document, done.patch))).toEqual(document)
  return { ...done, next }
}

describe('an entry copied', () => {
  const all = [
    ['timber', 0],
    ['timber', 1],
    ['pour', 0],
    ['pour', 1],
    ['cut', 0],
    ['cut', 1],
    ['hardware', 0],
    ['marking', 0],
    ['edge', 0]
  ] as const

  it('of each kind goes into the same piece under a new name, pointing where it pointed', () => {
    for (const [kind, index] of all) {
      const { next, id } = into(piece, pasted(piece, clip(kind, index), FILES))
      const list =
        next[
          (
            {
              timber: 'timbers',
              pour: 'pours',
              cut: 'cuts',
              hardware: 'hardware',
              marking: 'markings',
              edge: 'edges'
            } as const
          )[kind]
        ]!
      const original: object = list[index]!
      expect(list[list.length - 1]).toEqual(kind === 'edge' ? original : { ...original, id })
    }
  })

  it('of each kind goes into another piece, which reads, less what that piece has not', () => {
    for (const [kind, index] of all) into(bare, pasted(bare, clip(kind, index)))
    const cut = into(bare, pasted(bare, clip('cut', 0)))
    expect(cut.next.cuts![0]).not.toHaveProperty('for')
    expect(cut.says).toEqual(['"for" named "movement", which this piece has not: taken off'])
    const hardware = into(cut.next, pasted(cut.next, clip('hardware', 0)))
    expect(hardware.next.hardware![0]).toMatchObject({ in: 'pocket' })
    expect(hardware.next.hardware![0]).not.toHaveProperty('castIn')
    const inlay = into(cut.next, pasted(cut.next, clip('pour', 1)))
    expect(inlay.next.pours[1]).toMatchObject({ into: ['pocket'] })
  })

  it('keeps the name others called it by, unless it is taken', () => {
    expect(into(bare, pasted(bare, clip('timber', 0))).id).toBe('near')
    expect(into(piece, pasted(piece, clip('timber', 0), FILES)).id).toBe('near 2')
    expect(into(piece, pasted(piece, clip('timber', 1))).id).toBe('timber 2 2')
  })

  it('brings its drawings, under another name when the name is taken', () => {
    const got = into(bare, pasted(bare, clip('timber', 0)))
    expect(got.files).toEqual(FILES)
    expect(into(bare, pasted(bare, clip('timber', 0), FILES)).files).toEqual({})
    const other = into(bare, pasted(bare, clip('timber', 0), { 'a.svg': '<svg/>', 'a 2.svg': '<svg />' }))
    expect(other.files).toEqual({ 'a 3.svg': FILES['a.svg'] })
    expect(JSON.stringify(other.next.timbers)).not.toContain('a.svg')
    expect(JSON.stringify(other.next.timbers).match(/a 3\.svg/g)!.length).toBe(2)
    const lost = copied(piece, 'timber', 0, {})!
    expect(into(bare, pasted(bare, lost)).says).toEqual([
      'the drawing "a.svg" did not come along: put it beside the piece'
    ])
  })

  it('is moved with all that has a place', () => {
    const moved = (kind: Clipping['kind'], index: number) =>
      into(piece, pasted(piece, clip(kind, index), FILES, [10, -5])).next
    const timber = moved('timber', 0).timbers![2]!
    expect(timber.outline).toMatchObject({ at: [35.4, -5] })
    for (const key of ['outline', 'underside'] as const)
      expect(
        symmetricDifference(regionFor(timber[key]!), translate(regionFor(piece.timbers![0]![key]!), 10, -5))
      ).toBeLessThan(0.3)
    expect(moved('cut', 0).cuts![2]).toMatchObject({ shape: { at: [13, -1] } })
    expect(moved('cut', 1).cuts![2]!.along!.path!.replaceAll(' ', '')).toMatch(/^M10,?5L30,?-25$/)
    expect(moved('hardware', 0).hardware![1]).toMatchObject({ at: [10, -5] })
    expect(moved('marking', 0).markings![1]).toMatchObject({
      radial: { centre: [10, -5], at: [0, 90] },
      numerals: [{ at: [80, -5] }]
    })
    expect(moved('pour', 1).pours[2]).toMatchObject({
      stones: [{ zone: { at: [10, -5] } }, { placed: [{ at: [14, 0] }] }]
    })
  })

  it('finds no room in a full list, and none in a broken one', () => {
    const full = { ...piece, edges: Array.from({ length: 10 }, () => piece.edges![0]!) }
    expect(pasted(full, clip('edge', 0))).toEqual({
      problem: '10 entries in "edges" already; allowed: at most 10'
    })
    expect(pasted({ ...piece, cuts: 'none' } as never, clip('cut', 0))).toHaveProperty('problem')
    expect(copied(piece, 'cut', 9)).toBeNull()
    expect(copied({ ...piece, cuts: null } as never, 'cut', 0)).toBeNull()
  })
})

describe('a clipboard', () => {
  const good = clippingText(copied(piece, 'timber', 0, FILES)!)
  const changed = (change: (c: Record<string, unknown>) => void) => {
    const c = JSON.parse(good) as Record<string, unknown>
    change(c)
    return JSON.stringify(c)
  }
  it.each([
    ['a letter', 'Dear Sir', /no part of a piece/],
    ['a list', '[1]', /no part of a piece/],
    ['nothing', '', /no part of a piece/],
    [
      'another version',
      changed(c => {
        c['castwright'] = 2
      }),
      /version 2; allowed: version 1/
    ],
    [
      'an unknown kind',
      changed(c => {
        c['kind'] = 'toString'
      }),
      /kind "toString"; allowed: timber, pour/
    ],
    [
      'an unknown key',
      changed(c => {
        c['run'] = 1
      }),
      /unknown key "run"/
    ],
    [
      'an entry of another kind',
      changed(c => {
        c['kind'] = 'cut'
      }),
      /the copied cut/
    ],
    [
      'an entry that is none',
      changed(c => {
        c['entry'] = null
      }),
      /the copied timber/
    ],
    [
      'an unknown key of the entry',
      changed(c => {
        ;(c['entry'] as object as { x: number }).x = 1
      }),
      /the copied timber at x: found the unknown key/
    ],
    [
      'a drawing up the folders',
      changed(c => {
        c['files'] = { '../a.svg': '' }
      }),
      /a plain name/
    ],
    [
      'a drawing that is a program',
      changed(c => {
        c['files'] = { 'a.html': '' }
      }),
      /a plain name/
    ],
    [
      'a drawing that is no text',
      changed(c => {
        c['files'] = { 'a.svg': {} }
      }),
      /is no text/
    ],
    [
      'drawings without end',
      changed(c => {
        c['files'] = Object.fromEntries(Array.from({ length: 21 }, (_, k) => [`${k}.svg`, '']))
      }),
      /21 drawings/
    ],
    ['a foreign prototype', good.replace('"files":{', '"files":{"__proto__":"x",'), /a plain name/],
    ['a key twice', good.replace('"kind"', '"kind":"cut","kind"'), /no part/],
    ['depth without end', `${'['.repeat(100_000)}`, /no part/],
    [
      'shapes in shapes',
      changed(c => {
        let s: object = { circle: 1 }
        for (let k = 0; k < 40; k++) s = { union: [s] }
        ;(c['entry'] as { outline: object }).outline = s
      }),
      /no part/
    ],
    ['size without end', `"${'x'.repeat(8_000_001)}"`, /8000003 characters; allowed: at most 8000000/]
  ])('with %s is refused with words', (_, text, why) => {
    const got = readClipping(text) as { problem: string }
    expect(got.problem).toMatch(why)
    expect(got.problem.length).toBeLessThan(700)
  })

  it('of a spoiled text is refused or gives an entry that reads, never more', () => {
    const c = chance(95)
    let taken = 0
    for (let k = 0; k < 1500; k++) {
      const at = c.whole(0, good.length - 1)
      const bits = ['', '"', '{', '}', '[', ']', ',', '9', '-', 'e', '\u0000', '__proto__', 'null']
      const text = good.slice(0, at) + c.pick(bits) + good.slice(at + c.whole(0, 3))
      const got = readClipping(text)
      if ('problem' in got) continue
      taken++
      into(bare, pasted(bare, got))
    }
    expect(taken).toBeGreaterThan(20)
    expect(taken).toBeLessThan(1400)
  })
})
