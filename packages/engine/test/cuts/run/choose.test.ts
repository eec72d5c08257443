import { describe, expect, it } from 'vitest'
import type { CutterNeed } from '../../../src/cuts/run/choose.ts'
import { chooseCutter, depthOf } from '../../../src/cuts/run/choose.ts'
import { cutterShapeOf, cuttersOf } from '../../../src/cuts/run/cutters.ts'
import { checkShop, usualShop } from '../../../src/piece/read.ts'
import type { ShopDocument } from '../../../src/piece/shop-schema.ts'
import { chance } from '../../stack/random.ts'

const box = cuttersOf(usualShop())
const chosen = (need: CutterNeed, cutters = box.cutters) => {
  const c = chooseCutter(need, cutters)
  return 'none' in c ? c.none.says : c.cutter.id
}
const shop = (...cutters: NonNullable<ShopDocument['cutters']>) =>
  checkShop({ castwright: 1, cutters }, 'shop').value

describe('the cutters there are', () => {
  it('are the usual sizes where the shop lists none, and that is said', () => {
    expect(box.says).toBe('from the usual sizes: nothing in the shop yet')
    expect(box.cutters.some(c => c.own)).toBe(false)
    expect(new Set(box.cutters.map(c => c.id)).size).toBe(box.cutters.length)
    // What follows a bearing or has a profile runs along no path.
    expect(box.cutters.some(c => ['roundover', 'chamfer', 'forstner'].includes(c.kind))).toBe(false)
  })

  it('are the shop’s alone where it lists any, with kinds it does not know named', () => {
    const own = cuttersOf(
      shop(
        { id: 'six', kind: 'flat-end-mill', diameter: 6, length: 20, fastest: 30_000 },
        { id: 'odd', kind: 'flat end', diameter: 3, length: 10 }
      )
    )
    expect(own.says).toBeNull()
    expect(own.cutters.map(c => [c.id, c.name, c.fastestRpm])).toEqual([
      ['six', 'flat end mill 6 mm', 30_000]
    ])
    expect(own.unknown).toEqual([{ index: 1, id: 'odd', nearest: 'flat-end-mill' }])
  })

  it('take from the shop what it says and from the kind the rest', () => {
    const v = cutterShapeOf({ kind: 'v-60', diameter: 6, length: 5.2 }, 35)!
    expect(v).toMatchObject({ form: 'v', angleDeg: 60, tipMm: 0.1, holderMm: 35, plunges: true })
    expect(cutterShapeOf({ kind: 'v-60', diameter: 6, length: 5.2, angle: 55, tip: 0.3 }, 35)).toMatchObject({
      angleDeg: 55,
      tipMm: 0.3
    })
    expect(cutterShapeOf({ kind: 'surfacing', diameter: 25.4, length: 8 }, 35)).toMatchObject({
      form: 'surfacing',
      plunges: false,
      shankMm: 8
    })
    expect(cutterShapeOf({ kind: 'drill', diameter: 5, length: 52 }, 35)).toMatchObject({
      form: 'drill',
      angleDeg: 118,
      shankMm: 5
    })
    // A spur of 0.3 D stands on a cone of 2·atan(1/0.6) = 118.07°.
    expect(cutterShapeOf({ kind: 'brad-point', diameter: 5, length: 52 }, 35)!.angleDeg).toBeCloseTo(
      118.07,
      2
    )
    expect(cutterShapeOf({ kind: 'keyhole-cutter', diameter: 9.5, length: 11 }, 35)).toMatchObject({
      headMm: 4.8,
      neckMm: 4.8
    })
    expect(cutterShapeOf({ kind: 'roundover', diameter: 22, length: 10 }, 35)).toBeNull()
  })
})

describe('the cutter chosen', () => {
  it('is the largest that the corner takes', () => {
    const clear = (insideRadiusMm: number, widthMm: number, depthMm: number) => ({
      kind: 'clear' as const,
      insideRadiusMm,
      widthMm,
      depthMm
    })
    // 2 × 3 / 1.05 = 5.71: 4 mm is the next smaller; 3.2 mm of radius takes 6.
    expect(chosen(clear(3, 40, 10))).toBe('flat-end-mill 4')
    expect(chosen(clear(3.2, 40, 10))).toBe('flat-end-mill 6')
    expect(chosen(clear(Number.POSITIVE_INFINITY, 3.1, 10))).toBe('flat-end-mill 3')
    // No more than a small spindle drives well, and no wider a kerf than it needs.
    expect(chosen(clear(Number.POSITIVE_INFINITY, 200, 10))).toBe('flat-end-mill 8')
    expect(chosen({ ...clear(Number.POSITIVE_INFINITY, 200, 24), kind: 'outline' })).toBe(
      'flat-end-mill 6.35'
    )
    // Too deep for those: the next larger.
    expect(chosen({ ...clear(Number.POSITIVE_INFINITY, 200, 38), kind: 'outline' })).toBe('flat-end-mill 12')
  })

  it('says which would do where none does', () => {
    expect(chosen({ kind: 'clear', insideRadiusMm: 0.4, widthMm: 40, depthMm: 5 })).toBe(
      'no flat end mill of the right size; a flat end mill of at most 0.75 mm, edges at least 5 long, would do'
    )
    // Its width is no advice where any usual one is narrow enough.
    expect(chosen({ kind: 'clear', insideRadiusMm: 40, widthMm: 40, depthMm: 95 })).toMatch(
      /a flat end mill, edges at least 95 long, that reaches it would do/
    )
    const deep = chooseCutter({ kind: 'clear', insideRadiusMm: 1, widthMm: 40, depthMm: 30 }, box.cutters)
    expect(deep).toMatchObject({ none: { reason: 'reach', largestMm: 2 / 1.05 } })
    expect(chosen({ kind: 'v', angleDeg: 45, widthMm: 2, depthMm: 2 })).toMatch(/no V bit of 45°/)
    expect(chosen({ kind: 'flatten', depthMm: 1 }, [])).toMatch(/no surfacing bit; /)
    expect(chosen({ kind: 'drill', diameterMm: 7, depthMm: 10 })).toMatch(/a drill of 7 mm/)
  })

  it('goes down as the cut needs', () => {
    const own = cuttersOf(
      shop(
        { id: 'blind', kind: 'flat-end-mill', diameter: 6, length: 20, plunges: false },
        { id: 'small', kind: 'flat-end-mill', diameter: 3, length: 12 }
      )
    ).cutters
    const need: CutterNeed = { kind: 'clear', insideRadiusMm: 10, widthMm: 20, depthMm: 10 }
    expect(chosen(need, own)).toBe('blind')
    expect(chosen({ ...need, plunges: true }, own)).toBe('small')
  })

  it('fits exactly where the floor or the hole is the cutter’s own', () => {
    expect(chosen({ kind: 'round', widthMm: 6, depthMm: 2 })).toBe('ball-nose 6')
    expect(chosen({ kind: 'v', angleDeg: 60, widthMm: 1.4, depthMm: 1.2 })).toBe('v-60 6')
    expect(chosen({ kind: 'drill', diameterMm: 5, depthMm: 20 })).toBe('drill 5')
    expect(chosen({ kind: 'keyhole', headMm: 8, shankMm: 4.5, depthMm: 10 })).toBe('keyhole-cutter 9.5')
    expect(chosen({ kind: 'flatten', depthMm: 1 })).toBe('surfacing 25.4')
  })

  it('is never too wide, too short or one that cannot, over 500 seeded needs', () => {
    let found = 0
    for (let seed = 1; seed <= 500; seed++) {
      const c = chance(seed)
      const need: CutterNeed = {
        kind: c.pick(['clear', 'outline'] as const),
        insideRadiusMm: c.span(0.3, 12),
        widthMm: c.span(0.5, 40),
        depthMm: c.span(0.5, 45),
        plunges: c.is(0.3)
      }
      const drawer = box.cutters.filter(() => c.is(0.4))
      const choice = chooseCutter(need, drawer)
      const does = drawer.filter(
        d =>
          d.shape.form === 'flat' &&
          d.shape.diameterMm <= Math.min(need.widthMm, (2 * need.insideRadiusMm) / 1.05) &&
          depthOf(d) >= need.depthMm &&
          (!need.plunges || d.shape.plunges)
      )
      expect('none' in choice, `seed ${seed}`).toBe(does.length === 0)
      if ('none' in choice) continue
      found++
      expect(does).toContain(choice.cutter)
    }
    expect(found).toBeGreaterThan(100)
  })
})
