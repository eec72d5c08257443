import { describe, expect, it } from 'vitest'
import { cutDoes } from '../../src/sheets/run-fit.ts'
import type { Given } from '../findings/harness.ts'
import { mended, PLAIN } from '../findings/harness.ts'
import { asked, theOne, worked } from './asked.ts'

// Bought-in parts: does it fit.

const INCH = 25.4

// A panel `mm` thick when finished, 1 mm faced off each side, with a movement from the back.
const clock = (mm: number, pocket: number, relief: number, part: object): Given => ({
  piece: {
    ...PLAIN,
    timbers: PLAIN.timbers!.map(t => ({ ...t, thickness: mm + 2 })),
    cuts: [
      ...(relief > 0
        ? [
            {
              id: 'relief',
              face: 'front' as const,
              shape: { circle: 80, at: [100, 0] as [number, number] },
              depth: relief
            }
          ]
        : []),
      { id: 'pocket', face: 'back', shape: { rectangle: [60, 60], at: [100, 0] }, depth: pocket },
      { id: 'hole', kind: 'bore', face: 'front', shape: { circle: 8.2, at: [100, 0] }, through: true }
    ],
    hardware: [{ id: 'movement', kind: 'quartz-movement', in: 'pocket', ...part }]
  }
})

describe('theme J: does the bought-in part fit', () => {
  // Given: a dial of 1/16 in on a board of 1/4 in; thread to stand out 1/8 in. Assumed: a piece of 24 mm.
  const dial = (5 / 16) * INCH
  const c89 = (part: object) => clock(24, 24 - dial, 0, part)

  it('C89 a dial of 7.9 mm needs 11.1 mm of thread: the plan takes 12 of those sold', () => {
    const { shaft } = worked(c89({})).fits[0]!
    expect(shaft!.passesMm).toBeCloseTo(7.94, 2)
    // Two thin coats of hardwax oil on its way are added.
    expect(shaft!.filmMm).toBeCloseTo(0.05, 9)
    expect(shaft!.needsMm - shaft!.filmMm).toBeCloseTo(dial + INCH / 8, 1)
    expect(shaft!.hasMm).toBe(12)
    expect(asked(c89({}), 'thread-short')).toEqual([])
  })

  it('C89 the length of the whole shaft never counts', () => {
    const found = theOne(c89({ thread: 8.5, shaft: 20 }), 'thread-short')
    expect(found.severity).toBe('stop')
    expect(found.value).toBe(8.5)
    expect(found.fixSays).toBe('A thread of 12 mm')
    expect(asked(mended(c89({ thread: 8.5, shaft: 20 }), found.fix!), 'thread-short')).toEqual([])
  })

  it('C91 16 + 6 + web: 25 mm leaves a web of 3, and a thread of 8.5 passes it', () => {
    const given = clock(25, 16, 6, { thread: 8.5 })
    for (const id of ['cut-breaks-out', 'thin-floor', 'thread-short', 'pocket-shallow'])
      expect(asked(given, id), id).toEqual([])
    expect(worked(given).covers.find(c => c.cut === 1)!.floor!.mm).toBeCloseTo(3, 9)
  })

  it('C91 19 mm breaks through by 3', () => {
    const found = theOne(clock(19, 16, 6, { thread: 8.5 }), 'cut-breaks-out')
    expect(found.severity).toBe('stop')
    expect(found.says).toMatch(/breaks through by 3 mm into relief/)
  })

  it('C91 a web over the thread less 3.2, 5.3 mm, is one the shaft does not pass', () => {
    expect(asked(clock(27.1, 16, 6, { thread: 8.5 }), 'thread-short')).toEqual([])
    // At the limit itself a pocket cut 0.1 shallow is enough to spoil it.
    expect(theOne(clock(27.2, 16, 6, { thread: 8.5 }), 'thread-short').severity).toBe('caution')
    expect(theOne(clock(27.4, 16, 6, { thread: 8.5 }), 'thread-short').severity).toBe('stop')
  })

  it('C94 a hole of the largest bit, 60.3, for an insert of 79.4: it does not go in', () => {
    const given: Given = {
      piece: {
        ...PLAIN,
        cuts: [
          {
            id: 'bore',
            kind: 'bore',
            face: 'front',
            shape: { circle: '2 3/8 in', at: [100, 0] },
            depth: 12
          }
        ],
        hardware: [
          { id: 'insert', kind: 'clock-insert', in: 'bore', face: 'front', diameter: '3 1/8 in', depth: 11 }
        ]
      }
    }
    const found = theOne(given, 'hardware-pocket')
    expect(found.severity).toBe('stop')
    expect(found.value).toBeCloseTo((60.325 - 79.375) / 2, 1)
    expect(asked(mended(given, found.fix!), 'hardware-pocket')).toEqual([])
  })

  it('C96 cells, a driver or a switch cast in cannot be reached: a bay with a lid', () => {
    const cast = (kind: string): Given => ({
      piece: { ...PLAIN, hardware: [{ id: 'part', kind, at: [0, 0], castIn: 'clear' }] }
    })
    for (const kind of ['cell-holder', 'led-driver', 'switch-low-voltage']) {
      const found = theOne(cast(kind), 'sealed-in')
      expect(found.severity).toBe('stop')
      expect(found.says).toMatch(/pocket or a bay with a lid/)
    }
    // A strip with its own leads may be cast in.
    expect(asked(cast('led-strip'), 'sealed-in')).toEqual([])
  })

  // The hole follows the body behind the bezel; a maker's largest bit was 2 3/8 in.
  it('C94 the gap that is left counts, and the sheet says that no bit of the list makes the hole', () => {
    const bored = (mm: number, film: number): Given => ({
      piece: {
        ...PLAIN,
        finish: { both: { coat: 'oil-varnish', film } },
        cuts: [
          {
            id: 'bore',
            kind: 'bore',
            face: 'front',
            way: 'drill',
            shape: { circle: mm, at: [0, 0] },
            depth: 12
          }
        ],
        hardware: [
          { id: 'insert', kind: 'clock-insert', in: 'bore', face: 'front', diameter: '3 1/8 in', depth: 11 }
        ]
      },
      shop: {
        castwright: 1,
        cutters: [{ id: 'big', kind: 'forstner', diameter: 60.3, length: 50 }]
      }
    })
    expect(asked(bored(80, 0.02), 'fit-closes')).toEqual([])
    expect(asked(bored(80, 0.02), 'mask-or-cut-after')).toEqual([])
    const found = theOne(bored(80, 0.4), 'mask-or-cut-after')
    expect(found.severity).toBe('stop')
    expect(found.says).toMatch(/0\.4 mm of film on each wall/)
    expect(asked(mended(bored(80, 0.4), found.fix!), 'mask-or-cut-after')).toEqual([])
    expect(cutDoes(worked(bored(80, 0.02)), 0)[0]).toMatch(
      /No bit of Ø 80 is listed in the shop, the largest is 60\.3: .*template, held by screws or hot glue/
    )
  })

  it('C89 the glass is checked at the tip of the shaft: 0.5 to 1.0 mm', () => {
    // Dial 7.9 and a shaft of 18 stand out 10: the glass 10.5 off at the least.
    const glass = (mm: number) => c89({ shaft: 18, glass: mm })
    expect(asked(glass(10.6), 'glass-near')).toEqual([])
    const found = theOne(glass(10), 'glass-near')
    expect(found.value).toBeCloseTo(10 - (18 - dial - 0.05), 2)
    expect(asked(mended(glass(10), found.fix!), 'glass-near')).toEqual([])
  })

  it('C11 metal in resin has 0.1 mm on the radius, or it splits', () => {
    const handle = (mm: number, fitting: 'press' | 'loose'): Given => ({
      piece: {
        ...PLAIN,
        cuts: [
          { id: 'hole', kind: 'bore', face: 'back', mask: true, shape: { circle: mm, at: [0, 0] }, depth: 12 }
        ],
        hardware: [{ id: 'ferrule', kind: 'dowel-pin-6', in: 'hole', fitting }]
      }
    })
    const found = theOne(handle(6, 'press'), 'press-in-resin')
    expect(found.severity).toBe('caution')
    expect(found.limit).toBe(0.1)
    expect(asked(mended(handle(6, 'press'), found.fix!), 'press-in-resin')).toEqual([])
    expect(asked(handle(6.2, 'loose'), 'press-in-resin')).toEqual([])
  })
})
