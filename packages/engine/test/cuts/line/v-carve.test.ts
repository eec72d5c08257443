import { describe, expect, it } from 'vitest'
import { vCarvePath } from '../../../src/cuts/line/v-carve.ts'
import { rectangle } from '../../../src/shape/build.ts'
import { edgeDistance, edgeTree } from '../../../src/shape/edge-tree.ts'
import { area, bounds, inside } from '../../../src/shape/measure.ts'
import type { Region } from '../../../src/shape/region.ts'
import { textRegion } from '../../../src/stack/figure-outline.ts'
import { cutterOf, faultsOf, jobOf, leftAt, tipPlaces } from './carved.ts'

function carve(region: Region, job: ReturnType<typeof jobOf>) {
  const made = vCarvePath(region, job)
  if ('says' in made) throw new Error(made.says)
  expect(faultsOf(made.path, job)).toEqual([])
  return made
}

function grid(region: Region, count: number): [number, number][] {
  const { minX, minY, maxX, maxY } = bounds(region)
  return Array.from({ length: count }, (_, i) => [
    minX - 1 + ((i * 0.754877666) % 1) * (maxX - minX + 2),
    minY - 1 + ((i * 0.569840291) % 1) * (maxY - minY + 2)
  ])
}

const tan = Math.tan(Math.PI / 6)

describe('a groove of varying width', () => {
  for (const text of ['8', 'R', '25'])
    it(`leaves "${text}" as deep everywhere as its distance from the outline says`, () => {
      const region = textRegion(text, { x: 0, y: 0 }, 16, 0.004)
      const job = jobOf(cutterOf('v', 12), -8, {}, { tolMm: 0.01 })
      const { path, flatRegion, deepestMm } = carve(region, job)
      expect(flatRegion.rings).toEqual([])
      const points = grid(region, 350)
      const left = leftAt(tipPlaces(path, 0.02), job.cutter, points)
      const tree = edgeTree(region.rings)
      let cut = 0
      points.forEach(([x, y], i) => {
        const d = edgeDistance(tree, x, y)
        const within = inside(region, x, y)
        if (left[i]! < 0) cut++
        // Closed form: δ/tan(θ/2). Tolerance of the middle lines, twice, and half a step of the twin, over tan 30°.
        expect(Math.abs(left[i]! - (within ? -d / tan : 0)), `${x} ${y}`).toBeLessThan(0.03 / tan)
      })
      const b = bounds(region)
      const share = area(region) / (b.maxX - b.minX + 2) / (b.maxY - b.minY + 2)
      expect(cut / points.length).toBeCloseTo(share, 1)
      expect(deepestMm).toBeLessThan(-1.2)
    })

  it('of a rectangle goes as deep as half its width over tan 30°, in passes', () => {
    const job = jobOf(cutterOf('v', 12), -20, { depthMm: 2 })
    const { path, deepestMm } = carve(rectangle(30, 6, 0, 0.01), job)
    expect(deepestMm).toBeCloseTo(-3 / tan, 6)
    // 5.196 in passes of at most 2: three.
    expect(new Set(path.passes.map(p => p.name.replace(/^.*pass/, 'pass')))).toEqual(
      new Set(['pass 1 of 3', 'pass 2 of 3', 'pass 3 of 3'])
    )
  })

  it('that is limited leaves its flat floor for a flat cutter, and cuts the walls of it', () => {
    const region = rectangle(30, 12, 0, 0.01)
    const job = jobOf(cutterOf('v', 12, { tipMm: 0.2 }), -2)
    const { path, flatRegion, deepestMm } = carve(region, job)
    expect(deepestMm).toBeCloseTo(-2, 12)
    const w = 2 * 2 * tan
    expect(area(flatRegion)).toBeCloseTo((30 - w) * (12 - w), 2)
    const left = (x: number, y: number) => leftAt(tipPlaces(path, 0.05), job.cutter, [[x, y]])[0]!
    for (const d of [0.2, 0.5, 1, 1.15]) expect(left(3, 6 - d)).toBeCloseTo(-d / tan, 2)
    expect(left(3, 6 - 1.3)).toBeCloseTo(-2, 6)
    expect(left(3, 6 - 4)).toBe(0)
  })

  it('narrower than the blunt tip is refused, and needs a V', () => {
    const fine = rectangle(10, 0.4, 0, 0.01)
    expect(vCarvePath(fine, jobOf(cutterOf('v', 6, { tipMm: 0.5 }), -3))).toHaveProperty('says')
    expect(vCarvePath(fine, jobOf(cutterOf('flat', 6), -3))).toHaveProperty('says')
  })
})
