import { describe, expect, it } from 'vitest'
import { checkPiece, checkShop } from '../../src/piece/read.ts'
import { plan } from '../../src/plan.ts'
import { stepDetail } from '../../src/sheets/run-step.ts'
import { equilibriumMoisturePct } from '../../src/timber/moisture.ts'
import { worked } from '../cases/asked.ts'
import type { Given } from '../findings/harness.ts'
import { PLAIN } from '../findings/harness.ts'

const timber = (more: object, piece: object = {}): Given => ({
  piece: { ...PLAIN, ...piece, timbers: PLAIN.timbers!.map(t => ({ ...t, ...more })) }
})
const facts = (given: Given) => worked(given).timberFacts[0]!

// White ash, Wood Handbook Table 13-5: C_R 0.00169, C_T 0.00274 (read).
const [C_R, C_T] = [0.00169, 0.00274]
const DRY = equilibriumMoisturePct(21, 0.3)
const DAMP = equilibriumMoisturePct(24, 0.65)

describe('where timber will stand', () => {
  it('has the balance of the shop, the driest and the dampest air (Wood Handbook eq. 4-5)', () => {
    const { stand } = facts(timber({}))
    expect(stand.nowPct).toBeCloseTo(equilibriumMoisturePct(20.5, 0.5), 9)
    expect(stand.winterPct).toBeCloseTo(DRY, 9)
    expect(stand.summerPct).toBeCloseTo(DAMP, 9)
    const stored = facts({
      ...timber({}),
      shop: { castwright: 1, storage: { temperature: 10, humidity: 75 } }
    }).stand
    expect(stored.nowPct).toBeCloseTo(equilibriumMoisturePct(10, 0.75), 9)
    expect(stored.shopPct).toBeCloseTo(stand.shopPct, 9)
  })

  it('moves by eq. 13-2 across, by its rings, the other way through, and along by 0.00005 a %', () => {
    const flat = facts(timber({})).stand
    expect(flat.widthMm![1]).toBeCloseTo(100 * C_T * (DAMP - DRY), 6)
    expect(flat.radialMm![1]).toBeCloseTo(100 * C_R * (DAMP - DRY), 6)
    expect(flat.thicknessMm![1]).toBeCloseTo(20 * C_R * (DAMP - DRY), 6)
    expect(flat.lengthMm[1]).toBeCloseTo(200 * 0.00005 * (DAMP - DRY), 6)
    const quarter = facts(timber({ rings: 'quarter' })).stand
    expect(quarter.widthMm![1]).toBeCloseTo(flat.radialMm![1], 9)
    expect(quarter.thicknessMm![1]).toBeCloseTo(20 * C_T * (DAMP - DRY), 6)
    const rift = facts(timber({ rings: 'rift' })).stand
    expect(rift.widthMm![1]).toBeCloseTo((100 * (C_R + C_T) * (DAMP - DRY)) / 2, 6)
  })

  // Crank: 90 % at 0.2120·L²/D; 20 mm and 2e-10 m²/s: 4.9 days.
  it('settles in the days of Crank’s slab when bare, and no sooner finished', () => {
    const bare = facts(timber({}, { finish: {} })).stand
    expect(bare.bareDays[1]).toBeCloseTo((0.212 * 0.02 ** 2) / 2e-10 / 86_400, 1)
    expect(bare.finishedDays[0]).toBe(bare.bareDays[0])
    const film = facts(timber({}, { finish: { both: { coat: 'oil-varnish' } } })).stand
    expect(film.finishedDays[1]).toBeGreaterThan(1.5 * film.bareDays[1])
    expect(film.oneSided).toBe(false)
    const one = facts(timber({}, { finish: { front: { coat: 'flood-coat' } } }))
    expect(one.stand.oneSided).toBe(true)
    expect(one.cupping.oneSidedMm).toBeGreaterThan(0)
    expect(one.stand.finishedDays[2]).toBeLessThanOrEqual(4 * one.stand.bareDays[2])
    expect(facts(timber({})).cupping.oneSidedMm).toBe(0)
  })
})

describe('cupping', () => {
  // f = d·Δ·θ·tan θ with θ = atan(w/2d): 50 mm from the pith θ is 45°.
  it('by the rings goes with the air, from the pith that is given or said to be assumed', () => {
    const { cupping } = facts(timber({ pith: 50 }))
    const expected = (to: number) => -50 * (C_T - C_R) * (to - 8.5) * (Math.PI / 4)
    expect(cupping.ringsDryMm).toBeCloseTo(expected(DRY), 6)
    expect(cupping.ringsDampMm).toBeCloseTo(expected(DAMP), 6)
    const assumed = facts(timber({})).cupping
    expect(assumed.pithMm).toBeCloseTo(50, 9)
    expect([assumed.pithGiven, cupping.pithGiven]).toEqual([false, true])
    expect(facts(timber({ rings: 'quarter' })).cupping.ringsDryMm).toBeNull()
  })

  it('comes from a charred top, and from planing unlike', () => {
    expect(facts(timber({ charredTop: 1, brushed: true })).cupping.charMm).toBeGreaterThan(0.2)
    expect(facts(timber({})).cupping.charMm).toBe(0)
    expect(facts(timber({})).cupping.planedMm).toBeCloseTo(0, 9)
    expect(
      Math.abs(facts(timber({ moisture: 11 }, { flatten: { back: 1, front: 4 } })).cupping.planedMm!)
    ).toBeGreaterThan(0.02)
  })
})

describe('the board to start from', () => {
  it('adds what was measured, and says what was not', () => {
    const told = facts(timber({ rough: { cup: 1, bow: 0.5, twist: 1 } })).rough!
    expect(told.startMm).toBeCloseTo(18 + 2 + 1 + 1 + 0.5 + 0.5, 6)
    const guessed = facts(timber({})).rough!
    expect(guessed.parts.filter(p => p.from.startsWith('not measured')).map(p => p.what)).toEqual([
      'cup',
      'bow',
      'half of the twist'
    ])
    expect(facts(timber({ crown: { rise: 2 } })).rough).toBeNull()
  })

  it('is thicker for timber that still dries', () => {
    const part = (moisture: number) =>
      facts(timber({ moisture })).rough!.parts.find(p => p.what.startsWith('shrinks'))?.mm ?? 0
    expect(part(8.5)).toBe(0)
    expect(part(20)).toBeGreaterThan(0.3)
  })
})

describe('seal coat and hold-down', () => {
  // Sides of 100 × 200 × 20 and the top: 2 × 300 × 20 + 20 000 mm².
  it('has grams by area and pores, more on char, never past what the voids of a millimetre hold', () => {
    const seal = facts(timber({})).seal!
    expect(seal.areaM2).toBeCloseTo(0.032, 6)
    expect(seal.massG[0]).toBeCloseTo(0.032 * 160, 6)
    expect(seal.massG[2]).toBeCloseTo(0.032 * 330, 6)
    expect(seal.gPerM2[1]).toBeLessThan(seal.boundGPerM2)
    expect(facts(timber({ species: 'maple-sugar' })).seal!.massG[2]).toBeLessThan(seal.massG[2])
    expect(facts(timber({ charred: 1, brushed: true })).seal!.massG[1]).toBeCloseTo(1.5 * seal.massG[1], 6)
    expect(facts(timber({ sealed: 'no' })).seal).toBeNull()
  })

  it('counts screws, tape and weights', () => {
    const by = (held: string) => facts(timber({ held })).holding
    const holdG = worked(timber({})).floating[0]!.hold.holdDownG
    expect(by('weights')).toMatchObject({ unit: 'kg', amount: holdG / 1000 })
    const tape = by('tape')!
    expect(tape.amount * tape.eachG).toBeGreaterThanOrEqual(holdG)
    const screws = by('screws')!
    expect(screws.amount).toBe(Math.max(2, Math.ceil(holdG / screws.eachG)))
    expect(by('nothing')).toBeNull()
  })
})

describe('the run sheet of timber', () => {
  const planned = (given: Given) =>
    plan(
      { piece: checkPiece(given.piece, 'piece'), shop: checkShop({ castwright: 1 }, 'shop').value },
      { asOf: '2026-03-02T09:00:00Z', effort: 'preview' }
    )

  it('says the board, where it will live, what it moves, the seal and what holds it down', () => {
    const p = planned(timber({ held: 'screws' }))
    const at = (kind: string) =>
      stepDetail(
        p.plan,
        p.work,
        p.work.steps.findIndex(s => s.kind === kind)
      )
    const prepare = at('prepare timber')
    expect(prepare.does[0]).toMatch(
      /^Start from a board of \d\d(\.\d)? mm: finished 18, .* lay it on a flat table first\.$/
    )
    const labels = prepare.facts.map(f => f.label)
    expect(labels).toEqual(
      expect.arrayContaining(['Moisture', 'Where it will live', 'Over a year its width moves', 'Seal coat'])
    )
    expect(prepare.facts.find(f => f.label === 'Moisture')!.unit).toMatch(/given, not measured/)
    expect(at('set timber').does.join(' ')).toMatch(/Hold it down with 2 screws 4 mm thick/)
    for (const f of [...prepare.facts, ...at('set timber').facts])
      expect(`${f.value} ${f.unit}`).not.toMatch(/NaN|undefined|null/)
  })

  it('is carried by the plan as plain numbers', () => {
    const { plan: made } = planned(timber({}))
    expect(JSON.parse(JSON.stringify(made.timbers[0]!.facts))).toEqual(made.timbers[0]!.facts)
  })
})
