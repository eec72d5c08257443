import { describe, expect, it } from 'vitest'
import { TIMBERS } from '../../../src/catalogue/timber.ts'
import { metOf, metOnce, timberMet } from '../../../src/cuts/run/met.ts'

const of = (id: string) => timberMet(TIMBERS.find(t => t.id === id)!).material

describe('what a cutter meets', () => {
  // Woodworkers' own sorting, from practice: spruce and cedar soft, ash and walnut hard, ipe dense.
  it('sorts timber by its density', () => {
    expect(['spruce-sitka', 'redcedar-western'].map(of)).toEqual(['softwood', 'softwood'])
    expect(['ash-white', 'walnut-black', 'oak-european', 'beech-european'].map(of)).toEqual(
      Array(4).fill('hardwood')
    )
    expect(
      TIMBERS.filter(t => (t.density12KgM3 ?? 0) > 900).every(t => timberMet(t).material === 'dense')
    ).toBe(true)
    expect(timberMet({ name: 'unknown', density12KgM3: null, gravity12: null }).material).toBe('hardwood')
    // 0.4 × 1120 = 448.
    expect(timberMet({ name: 'light', density12KgM3: null, gravity12: 0.4 }).material).toBe('softwood')
  })

  it('takes pours and fillings of markings as resin, formers as board, and each once', () => {
    const met = (['pour', 'marking', 'former', 'pour'] as const).map(kind => metOf({ kind, index: 0 }, []))
    expect(met.map(m => m.material)).toEqual(['resin', 'resin', 'board', 'resin'])
    expect(metOnce(met).map(m => m.material)).toEqual(['resin', 'board'])
  })
})
