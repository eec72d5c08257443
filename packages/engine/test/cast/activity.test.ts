import { describe, expect, it } from 'vitest'
import { castOf } from '../../src/cast/cast.ts'
import { worked } from '../cases/asked.ts'
import type { Given } from '../findings/harness.ts'
import { PLAIN } from '../findings/harness.ts'

const START = '2026-03-02T09:00+01:00'
const momentAfter = (min: number) =>
  new Date(Date.parse(START) + min * 60_000).toISOString().replace(/\.\d+Z$/, 'Z')
const piece: Given['piece'] = {
  ...PLAIN,
  pours: [
    { id: 'first', resin: 'medium', depth: 5, start: START },
    { id: 'second', resin: 'medium', height: 10, after: '10 h' }
  ]
}
let nth = 0
const stage = (word: string, min: number) => ({
  id: `r-${String(++nth).padStart(8, '0')}`,
  kind: 'stage',
  pour: 'first',
  stage: word,
  at: momentAfter(min)
})
const given = (...readings: object[]): Given => ({ piece, readings })

/** Casts of the same pours when their resin is `factor` times as fast: what the made readings come from. */
function made(factor: number) {
  const { stack, materials, speeds, shop } = worked({ piece })
  return castOf({
    stack,
    choices: materials.resins,
    speeds: speeds.map(s => ({ ...s, factor: s.factor * factor })),
    board: materials.base,
    shop,
    effort: 'preview'
  })
}

describe('what a reading teaches', () => {
  it.each([0.8, 1.25, 1.5])(
    'a pour made %s times as fast: “strings” gives it back within 2 %, later windows move with it',
    factor => {
      const before = worked({ piece }).casts[0]!
      const own = made(factor)[0]!
      const cast = worked(given(stage('strings', own.windows.marbling!.open))).casts[0]!
      expect(Math.abs(cast.learned!.factor / factor - 1)).toBeLessThan(factor === 1.5 ? 0.04 : 0.02)
      for (const k of ['recoat', 'demould'] as const) {
        expect(cast.windows[k].open / own.windows[k].open).toBeCloseTo(1, 1)
        expect(Math.sign(cast.windows[k].open - before.windows[k].open)).toBe(factor > 1 ? -1 : 1)
      }
      expect(cast.learned!.says).toMatch(/faster|slower/)
    }
  )

  it('narrows the bands of what is still to come', () => {
    const before = worked({ piece }).casts[0]!
    const own = made(1.25)[0]!
    const cast = worked(given(stage('strings', own.windows.marbling!.open))).casts[0]!
    const width = (w: readonly [number, number | null]) => w[1]! - w[0]
    expect(width(cast.windows.demould.openBand)).toBeLessThan(0.6 * width(before.windows.demould.openBand))
    expect(cast.learned!.timeBand).toBeLessThan(0.1)
  })

  it('moves the next pour of the same resin, and the wait the plan gives it', () => {
    const before = worked({ piece }).casts[1]!
    const own = made(1.25)[0]!
    const work = worked(given(stage('strings', own.windows.marbling!.open)))
    const next = work.casts[1]!
    expect(next.learned!.factor).toBeCloseTo(1.25, 1)
    expect(next.windows.marbling!.open).toBeLessThan(before.windows.marbling!.open)
    expect(work.speeds[1]!.factor).toBeCloseTo(1.25, 1)
  })

  it('later signs weigh in: three that agree are surer than one', () => {
    const own = made(1.25)[0]!
    const w = own.windows
    const one = worked(given(stage('strings', w.marbling!.open))).casts[0]!.learned!
    const three = worked(
      given(
        stage('strings', w.marbling!.open),
        stage('gelled', w.halfGelMin!),
        stage('tacky', (w.tacky.open + w.tacky.close!) / 2)
      )
    ).casts[0]!.learned!
    expect(three.factor).toBeCloseTo(1.25, 1)
    expect(three.timeBand).toBeLessThan(one.timeBand)
    expect(three.disagree).toBeNull()
  })

  it('a temperature in the rise gives it back too', () => {
    const own = made(1.25)[0]!
    const k = own.curve.min.findIndex(m => m > 0.7 * own.peakMin)
    const at = own.curve.min[k]!
    const reading = {
      id: 'r-temperature-1',
      kind: 'temperature',
      pour: 'first',
      temperature: own.curve.hottestC[k]! - 0.8,
      at: momentAfter(at)
    }
    expect(worked(given(reading)).casts[0]!.learned!.factor).toBeGreaterThan(1.05)
  })

  it('signs that contradict each other are said, with what each asks for', () => {
    const learned = worked(given(stage('strings', 60), stage('gelled', 1500))).casts[0]!.learned!
    expect(learned.disagree).toMatch(/do not go together/)
    expect(learned.disagree).toMatch(/“strings” after 60 min \(\d/)
  })

  it('a sign before its pour, and one without a known start, say what is wrong and move nothing', () => {
    const early = worked(given(stage('strings', -30))).casts[0]!
    expect(early.learned).toMatchObject({ factor: 1, signs: [] })
    expect(early.learned!.unused[0]).toMatch(/“strings” of first at 2026-03-02 .* lies before it was mixed/)
    const { start: _, ...first } = piece.pours[0]!
    const unknown = worked({
      piece: { ...piece, pours: [first, piece.pours[1]!] },
      readings: [stage('strings', 60)]
    }).casts[0]!
    expect(unknown.learned!.unused[0]).toMatch(/when it was mixed is not known/)
  })

  it('the time of mixing that was read goes before the one that was planned', () => {
    const own = made(1.25)[0]!
    const mixed = { id: 'r-mixed-00001', kind: 'mixed', pour: 'first', at: momentAfter(45) }
    const cast = worked(given(mixed, stage('strings', own.windows.marbling!.open + 45))).casts[0]!
    expect(cast.learned!.factor).toBeCloseTo(1.25, 1)
  })

  it('readings of no pour leave the plan as it was', () => {
    const other = { id: 'r-00000abc', kind: 'stage', pour: 'another', stage: 'gelled', at: momentAfter(60) }
    expect(worked(given(other)).casts).toEqual(worked({ piece }).casts)
  })
})
