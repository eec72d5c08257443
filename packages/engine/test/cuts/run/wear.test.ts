import { expect, it } from 'vitest'
import type { CutMaterial } from '../../../src/catalogue/chip-load.ts'
import { wearOf } from '../../../src/cuts/run/wear.ts'

const met = (...kinds: CutMaterial[]) => kinds.map(material => ({ material, name: material }))

// Order from practice: timber dulls least, resin more, filled resin most.
it('an edge wears with its way, and sooner in resin and in filled resin', () => {
  const share = (kind: CutMaterial, filled = false) => wearOf(100_000, met(kind), filled).share
  expect(share('softwood')).toBeLessThan(share('hardwood'))
  expect(share('hardwood')).toBeLessThan(share('dense'))
  expect(share('dense')).toBeLessThan(share('resin'))
  expect(share('resin')).toBeLessThan(share('resin', true))
  // A filling of the resin is nothing to timber beside it.
  expect(share('hardwood', true)).toBe(share('hardwood'))
  expect(wearOf(200_000, met('resin'), false).share).toBeCloseTo(2 * share('resin'), 12)
  expect(wearOf(100_000, met('hardwood', 'resin'), false).share).toBe(share('resin'))
  expect(wearOf(10_000, met('resin'), false).says).toBeNull()
  expect(wearOf(60_000, met('resin'), true).says).toMatch(/^60 m through resin with mineral or metal in it/)
  expect(wearOf(1, [], false).says).toBeNull()
})
