import { describe, expect, it } from 'vitest'
import { poursNeeded } from '../../src/resin/pours.ts'
import type { Given } from '../findings/harness.ts'
import { ids, mended, PLAIN } from '../findings/harness.ts'
import { asked, theOne, worked } from './asked.ts'

// Moulds: leaks, release, spills.

describe('theme C: the mould', () => {
  // Given: slab not flattened, daylight under one plank, wood tight against plywood walls, joints siliconed on
  // one side. Assumed: 3 mm at the worst under the plank.
  const river = (mould: object, level: number): Given => ({
    piece: {
      ...PLAIN,
      mould: { ...PLAIN.mould, base: 'birch-plywood-18', ...mould },
      timbers: PLAIN.timbers!.map((t, i) => (i === 0 ? { ...t, level } : t))
    }
  })
  const tight = river({ margin: 0, joints: 'outside', waterTest: false }, 3)

  it('C23 tight wood, one-sided joints and no water test are all said', () => {
    const gap = theOne(tight, 'mould-gap')
    expect(gap).toMatchObject({ severity: 'caution', value: 0, limit: 3 })
    expect(gap.fix).toEqual([{ op: 'replace', path: '/mould/margin', value: 3 }])
    expect(theOne(tight, 'water-test').says).toMatch(/no water test .* do not mix/)
    expect(theOne(tight, 'joint-side').severity).toBe('caution')
    const sound = ids(river({}, 0))
    for (const id of ['mould-gap', 'water-test', 'joint-side']) expect(sound).not.toContain(id)
  })

  it('C23 a water test among the readings counts', () => {
    const reading = {
      id: 'water-01',
      kind: 'water test',
      at: '2026-03-02T09:00+01:00',
      lost: 0,
      over: 60
    }
    expect(asked({ ...tight, readings: [reading] }, 'water-test')).toEqual([])
  })

  it('C23 the gap under the slab is in the volume', () => {
    const filled = (level: number) => worked(river({}, level)).stack.pours[0]!.filledMl
    // 100 × 200 mm hollow by 3 mm at the worst, half of that on average: 30 ml.
    expect(filled(3) - filled(0)).toBeCloseTo((100 * 200 * 3) / 2 / 1000, 1)
  })

  // Given: a cookie of about 4 in, rotten centre, bottom closed with tape, a rolled mat as divider.
  // Assumed: 300 mm across, the centre 120 mm.
  const lamp = (joints: 'tape only' | 'inside and outside', sealed: boolean, depth = '2 in'): Given => ({
    piece: {
      castwright: 1,
      name: 'a cookie lamp',
      outline: { circle: 300 },
      mould: {
        joints,
        dams: [
          {
            line: [
              [-60, 0],
              [0, 60],
              [60, 0],
              [0, -60],
              [-60, 0]
            ],
            sealed
          }
        ]
      },
      pours: [{ id: 'core', resin: 'own', depth: '4 in' }]
    },
    shop: { castwright: 1, resins: [{ id: 'own', like: 'deep', greatestDepth: depth }] }
  })

  it('C24 a divider that is not sealed to the base lets the colours join; tape is no seal', () => {
    const divider = theOne(lamp('tape only', false), 'divider-unsealed')
    expect(divider.severity).toBe('stop')
    expect(divider.says).toMatch(/not sealed to the base.* colours will join/)
    expect(theOne(lamp('tape only', false), 'joint-side').says).toMatch(/tape/)
    expect(asked(lamp('inside and outside', true), 'divider-unsealed')).toEqual([])
    expect(asked(mended(lamp('tape only', false), divider.fix!), 'divider-unsealed')).toEqual([])
  })

  it('C24 4 in are 2 pours of a 2 in resin and 16 of a 1/4 in one', () => {
    expect(poursNeeded(4 * 25.4, 2 * 25.4)).toBe(2)
    expect(theOne(lamp('tape only', true), 'label-depth').says).toMatch(/\b2 pours of/)
    expect(theOne(lamp('tape only', true, '1/4 in'), 'label-depth').says).toMatch(/\b16 pours of/)
  })

  // Given: 457 × 254 × 25 mm, a simple dam on the bench. Assumed: the bench is faced board, nothing between.
  const tray = (liner: string): Given => ({
    piece: {
      castwright: 1,
      name: 'a tray',
      outline: { rectangle: ['18 in', '10 in'] },
      mould: { base: 'melamine-particleboard-18', wallBoard: 'hdpe-sheet', liner },
      pours: [{ id: 'river', resin: 'deep', depth: '1 in' }]
    }
  })

  it('C28 a bench without release stops the plan, surface by surface', () => {
    const found = theOne(tray('none'), 'no-release')
    expect(found.severity).toBe('stop')
    expect(found.says).toMatch(/base \(melamine.*\) no, walls \(polyethylene.*\) yes/)
    expect(found.says).toMatch(/bench under a dam/)
    expect(asked(tray('release-tape'), 'no-release')).toEqual([])
    expect(asked(tray('masking-tape'), 'no-release')).toHaveLength(1)
  })

  // Given: flexible pan, about 600 ml, carried outside full. Assumed: 200 × 150 mm, freeboard 4 mm.
  const pan = (wall: number, moved: boolean): Given => ({
    piece: {
      castwright: 1,
      name: 'a pan',
      outline: { rectangle: [200, 150] },
      mould: { margin: 0, base: 'silicone-mould', liner: 'none', wall, moved },
      pours: [{ id: 'fill', resin: 'deep', mass: '660 g' }]
    }
  })

  it('C30 under 10 mm of freeboard in a mould that is moved: fill it in place', () => {
    const found = theOne(pan(24, true), 'wall-low')
    expect(found.severity).toBe('caution')
    expect(found.value).toBeCloseTo(4, 6)
    expect(found.says).toMatch(/Fill it where it cures/)
    expect(asked(pan(24, false), 'wall-low')).toEqual([])
    expect(asked(pan(30, true), 'wall-low')).toEqual([])
    expect(theOne(pan(19, false), 'wall-low').severity).toBe('stop')
    // 600 ml are 0.66 kg, and the heat of that mass is looked at.
    const { stack, casts } = worked(pan(24, true))
    expect(stack.pours[0]!.liquidMl).toBeCloseTo(600, 0)
    expect(casts[0]!.peakBandC[1]).toBeGreaterThan(casts[0]!.startC)
  })
})
