import { expect, it } from 'vitest'
import type { CutMaterial } from '../../../src/catalogue/chip-load.ts'
import { PIGMENTS } from '../../../src/catalogue/pigment.ts'
import { STONES } from '../../../src/catalogue/stone.ts'
import type { Met } from '../../../src/cuts/run/met.ts'
import { filledPours, metOf } from '../../../src/cuts/run/met.ts'
import { wearOf } from '../../../src/cuts/run/wear.ts'
import { wornFindings } from '../../../src/findings/edge-worn.ts'

const met = (...kinds: CutMaterial[]): Met[] => kinds.map(material => ({ material, name: material }))
const filledResin: Met = { material: 'resin', name: 'filled resin', filled: true }

// Order from practice: timber dulls least, resin more, filled resin most.
it('an edge wears with its way, and sooner in resin and in filled resin', () => {
  const share = (...list: Met[]) => wearOf(100_000, list).share
  const of = (kind: CutMaterial) => share(...met(kind))
  expect(of('softwood')).toBeLessThan(of('hardwood'))
  expect(of('hardwood')).toBeLessThan(of('dense'))
  expect(of('dense')).toBeLessThan(of('resin'))
  expect(of('resin')).toBeLessThan(share(filledResin))
  expect(share(...met('hardwood'), filledResin)).toBe(share(filledResin))
  expect(wearOf(200_000, met('resin')).share).toBeCloseTo(2 * of('resin'), 12)
  expect(share(...met('hardwood', 'resin'))).toBe(of('resin'))
  expect(wearOf(10_000, met('resin')).says).toBeNull()
  expect(wearOf(60_000, [filledResin]).says).toMatch(/^60 m through resin with mineral or metal in it/)
  expect(wearOf(1, []).says).toBeNull()
})

it('a worn edge is said once, in the cut that wears it', () => {
  const cut = (at: string, id: string, metres: number) => ({
    at,
    id,
    cutter: `mill ${id}`,
    met: [filledResin],
    cutMm: 1000 * metres
  })
  const found = wornFindings([cut('/a', '6', 30), cut('/b', '3', 10), cut('/c', '6', 30), cut('/d', '6', 30)])
  expect(found.map(f => [f.at, f.value])).toEqual([['/c', 1.2]])
})

it('stones, metal and mineral powders fill a pour; pastes and plant matter do not', () => {
  const row = (id: string) => STONES.find(s => s.id === id)!
  const pigment = (kind: string) => ({ pigment: PIGMENTS.find(p => p.kind === kind)! })
  expect([
    ...filledPours({
      stones: [[row('river-gravel')], [row('wood-chips')], [], [], []],
      tints: [[], [], [pigment('metallic')], [pigment('opaque-paste')], [pigment('glow')]]
    })
  ]).toEqual([0, 2, 4])
  expect(metOf({ kind: 'pour', index: 2 }, [], new Set([2])).filled).toBe(true)
  expect(metOf({ kind: 'marking', index: 2 }, [], new Set([2])).filled).toBeUndefined()
})
