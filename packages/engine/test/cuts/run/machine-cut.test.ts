import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { machineCutsOf } from '../../../src/cuts/run/machine-cut.ts'
import { shapeNeed } from '../../../src/cuts/run/machine-need.ts'
import type { ShopDocument } from '../../../src/piece/shop-schema.ts'
import { circle, rectangle } from '../../../src/shape/build.ts'
import { difference } from '../../../src/shape/combine.ts'
import { worked } from '../../cases/asked.ts'
import type { Given } from '../../findings/harness.ts'
import { findings, PLAIN } from '../../findings/harness.ts'
import { soundPiece } from '../../findings/sound-piece.ts'

const examples = join(import.meta.dirname, '../../../../../examples')
const read = (file: string) => readFileSync(join(examples, file), 'utf8')
const names = readdirSync(examples).filter(f => f.endsWith('.piece.json') && !f.includes('spoiled'))
const files = Object.fromEntries(
  readdirSync(examples)
    .filter(f => f.endsWith('.svg'))
    .map(f => [f, read(f)])
)
const MINE = new Set(['cutter-missing', 'spindle-fast', 'cutter-rubs', 'cutter-pushes', 'cold-brittle'])
const bare: ShopDocument = { castwright: 1, machine: { x: 1500, y: 1500 } }
const mine = (given: Given) => findings(given).filter(f => MINE.has(f.id))

describe('what the machine cuts', () => {
  it('nothing is said of cutters in the examples and in seeded sound pieces, with a machine or without', () => {
    expect(names.length).toBe(3)
    for (const name of names) {
      const piece = JSON.parse(read(name))
      for (const shop of [bare, JSON.parse(read('workshop.shop.json')) as ShopDocument])
        expect(mine({ piece, shop, files }), name).toEqual([])
    }
    for (let seed = 1; seed <= 8; seed++)
      expect(mine({ piece: soundPiece(seed), shop: bare }), `seed ${seed}`).toEqual([])
  }, 60_000)

  it('has a cutter and feeds for every cut, marking and flattening of the panel with its shop', () => {
    const { machineCuts: m } = worked({
      piece: JSON.parse(read('saltmarsh-panel.piece.json')),
      shop: JSON.parse(read('workshop.shop.json')),
      files
    })
    expect(m.box.says).toBeNull()
    expect(m.cuts.filter(c => c.run === null)).toEqual([])
    expect(new Set(m.cuts.map(c => c.of))).toEqual(new Set(['cut', 'marking', 'flatten']))
    const channel = m.cuts.find(c => c.id === 'cable channel')!
    // It runs through resin: the careful depth, and the ash at its ends is named too.
    expect(channel.met.map(x => x.material).sort()).toEqual(['hardwood', 'resin'])
    expect(channel.run!.depthMm).toBeLessThanOrEqual(0.375 * 6 + 1e-9)
  })

  it('is empty without a machine, and knows the depth right through', () => {
    const through: Given = {
      piece: {
        ...PLAIN,
        cuts: [
          { id: 'hole', kind: 'bore', face: 'front', shape: { circle: 20, at: [100, 0] }, through: true }
        ]
      }
    }
    const none = worked(through)
    expect(none.machineCuts.cuts).toEqual([])
    const [hole] = worked({ ...through, shop: bare }).machineCuts.cuts
    // 20 mm cast, 1 off each face.
    expect(hole!.need.depthMm).toBeCloseTo(18, 6)
    expect(hole!.met).toEqual([{ material: 'hardwood', name: none.materials.timbers[1]!.name }])
  })

  it('asks a frame for its width and a shape for its widest place', () => {
    const frame = difference(rectangle(120, 80, 0, 0.01), rectangle(100, 60, 0, 0.01))
    const need = (kind: 'outline' | 'pocket', region = frame) => {
      const n = shapeNeed(
        { kind, shape: { rectangle: [120, 80] }, islands: [{ circle: 1 }] } as never,
        region,
        9,
        []
      )!
      return (n.need as { widthMm: number }).widthMm
    }
    // 10 mm all round; its corners hold a disc that touches two sides and the inner corner: r = 10·√2/(1 + √2).
    expect(need('pocket')).toBeCloseTo((20 * Math.SQRT2) / (1 + Math.SQRT2) + 0.02, 1)
    // Without cutters nothing fits, so the widest place is asked for.
    expect(need('outline')).toBe(need('pocket'))
    expect(need('pocket', circle(14, 0.001))).toBeCloseTo(14.02, 1)
  })

  // The fast way to a frame's width, against the plane: area over half its perimeter.
  it('takes a ring as wide as it is', () => {
    const ring = difference(circle(120, 0.001), circle(104, 0.001))
    const { machineCuts } = worked({ piece: PLAIN, shop: bare })
    const n = shapeNeed(
      { kind: 'outline', shape: { circle: 120 }, islands: [{ circle: 104 }] } as never,
      ring,
      9,
      [...machineCuts.box.cutters]
    )!
    expect((n.need as { widthMm: number }).widthMm).toBeCloseTo(8.02, 2)
  })

  it('costs the edit little', () => {
    const w = worked({
      piece: JSON.parse(read('saltmarsh-panel.piece.json')),
      shop: JSON.parse(read('workshop.shop.json')),
      files
    })
    const times = Array.from({ length: 8 }, () => {
      const from = performance.now()
      machineCutsOf(w.stack, w.materials, w.shop)
      return performance.now() - from
    })
    // The best of eight: 4 ms here; a busy machine is given room.
    expect(Math.min(...times)).toBeLessThan(15)
  })
})
