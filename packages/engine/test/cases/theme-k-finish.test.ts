import { describe, expect, it } from 'vitest'
import type { PieceDocument } from '../../src/piece/piece-schema.ts'
import type { Given } from '../findings/harness.ts'
import { mended } from '../findings/harness.ts'
import { asked, theOne, worked } from './asked.ts'

// Finish and service: scratches and gloss.

describe('theme K: scratches that only show when polished', () => {
  // Given: dry 80-120-150-220 (-320-400-600-800), then wet 800-1000-1500-2000-3000, compound, polish.
  // Assumed: a top of 1.2 m², 1200 × 1000, of clear resin, flattened on a sled.
  const top = (finish: NonNullable<PieceDocument['finish']>['both']): Given => ({
    piece: {
      castwright: 1,
      name: 'a clear top',
      outline: { rectangle: [1200, 1000] },
      flatten: { back: 1, front: 1 },
      pours: [{ id: 'clear', resin: 'deep', depth: 22 }],
      finish: { both: finish }
    }
  })
  const polished = (...grits: number[]) => top({ coat: 'none', gloss: 'polished', grits })
  const DRY = [80, 120, 150, 220]
  const WET = [1000, 1500, 2000, 3000]

  it('C100 220 straight to 800 skips grades: scratches show; 320, 400 and 600 between do not', () => {
    const found = theOne(polished(...DRY, 800, ...WET), 'grit-step-skipped')
    expect(found.severity).toBe('caution')
    // 68 µm over 21.8, against 1.7.
    expect(found.value).toBeCloseTo(68 / 21.8, 4)
    expect(found.says).toMatch(/220 to 800 skips 7 grades, .* 3\.1 times .* show in the resin/)
    expect(asked(polished(...DRY, 320, 400, 600, 800, ...WET), 'grit-step-skipped')).toEqual([])
    expect(asked(mended(polished(...DRY, 800, ...WET), found.fix!), 'grit-step-skipped')).toEqual([])
  })

  it('C100 grit 150 marks under a gloss: the film is too thin to hide them', () => {
    const given = (grit: number) => top({ coat: 'nitro-lacquer', gloss: 'gloss', coats: 2, film: 0.03, grit })
    const found = theOne(given(150), 'scratch-shows')
    expect(found.severity).toBe('caution')
    // 0.125 of a grain of 100 µm against a third of 30.
    expect(found.value).toBeCloseTo(12.5, 9)
    expect(found.limit).toBeCloseTo(10, 9)
    expect(found.fix).toEqual([{ op: 'replace', path: '/finish/both/grit', value: 220 }])
    expect(asked(given(320), 'scratch-shows')).toEqual([])
  })

  it('C100 a satin oil may stop earlier: nothing is said of scratches', () => {
    const oiled = top({ coat: 'hardwax-oil', gloss: 'satin', grit: 240 })
    for (const id of ['scratch-shows', 'grit-step-skipped', 'gloss-not-reached'])
      expect(asked(oiled, id)).toEqual([])
  })

  it('C100 polished from 800 stays cloudy', () => {
    const found = theOne(polished(...DRY, 320, 400, 600, 800), 'gloss-not-reached')
    expect(found.says).toMatch(/sanded to P800 comes out satin.* Sand it to P2500, then polish/)
  })

  it('C100 hours are steps times area: our own ladder for 1.2 m², two passes a grade', () => {
    const { sanding } = worked(top({ coat: 'none', gloss: 'polished' })).faces[0]
    const { steps, minutes } = sanding!.ladder
    expect(steps.at(-1)!.grade.grit).toBe(2500)
    // Face and half of an edge of 20 mm; half a disc of 150 mm at 30 mm/s.
    const pass = (1.2e6 + 4400 * 10) / (75 * 30 * 60)
    const passes = steps.reduce((sum, s) => sum + s.passes, 0)
    expect(steps.slice(1).every(s => s.passes === 2)).toBe(true)
    expect(minutes).toBeCloseTo(2 * steps.length + passes * pass, 6)
    expect(minutes / 60).toBeGreaterThan(3)
    expect(sanding!.pastesUm).toEqual([3, 1])
  })
})
