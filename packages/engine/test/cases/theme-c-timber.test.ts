import { describe, expect, it } from 'vitest'
import type { Given } from '../findings/harness.ts'
import { ids, mended, PLAIN } from '../findings/harness.ts'
import { asked, theOne, worked } from './asked.ts'

// What timber brings into a pour: bark, char, hard seal coats, sharp corners, lift.

const planks = (more: object, piece: object = {}): Given => ({
  piece: { ...PLAIN, ...piece, timbers: PLAIN.timbers!.map(t => ({ ...t, ...more })) }
})

describe('themes A, C and E: timber in the pour', () => {
  // Given: a river that turns a right angle. Assumed: no radius, 45 mm deep, the inner plank 150 × 150.
  const turn = (corner: number): Given => ({
    piece: {
      ...PLAIN,
      timbers: [
        {
          id: 'inner',
          species: 'ash-white',
          outline: { rectangle: [150, 100], at: [75, -50], corner },
          thickness: 45,
          moisture: 8.5
        }
      ],
      pours: [{ id: 'river', resin: 'deep', depth: 45 }]
    }
  })

  it('C08 a sharp inside corner of the resin is a crack starter: round it', () => {
    const found = theOne(turn(0), 'corner-crack')
    expect(found.severity).toBe('caution')
    expect(found.says).toMatch(/at 0, 0: .* cracks start .* Round it, .* or cast the legs/)
    expect(found.fix).toEqual([{ op: 'replace', path: '/timbers/0/outline/corner', value: 6 }])
    expect(asked(turn(20), 'corner-crack')).toEqual([])
  })

  // Given: an oak cookie of 100 mm, one face flat, rotten centre out. Assumed: 300 mm across, uneven by 3 mm.
  const lamp = (held: 'nothing' | 'screws', back: number): Given => ({
    piece: {
      castwright: 1,
      name: 'a cookie lamp',
      outline: { circle: 300 },
      flatten: { back, front: 3 },
      timbers: [
        {
          id: 'cookie',
          species: 'oak-white',
          outline: { difference: [{ circle: 300 }, { circle: 120 }] },
          thickness: '4 in',
          moisture: 8.5,
          level: 3,
          held
        }
      ],
      pours: [{ id: 'core', resin: 'deep', depth: '4 in' }]
    }
  })

  it('C24 the cookie floats unless it is held, and both its faces want flattening', () => {
    const found = theOne(lamp('nothing', 3), 'timber-floats')
    expect(found.severity).toBe('stop')
    // Displaced resin less the timber: π/4·(300² − 120²)·101.6 mm³.
    const volumeMl = ((Math.PI / 4) * (300 ** 2 - 120 ** 2) * 101.6) / 1000
    const { floating, materials } = worked(lamp('nothing', 3))
    const lift = volumeMl * materials.resins[0]!.densityGMl - floating[0]!.massG
    expect(Math.abs(found.value! / lift - 1)).toBeLessThan(0.01)
    expect(floating[0]!.massG).toBeCloseTo((volumeMl * floating[0]!.densityKgM3) / 1000, -1)
    expect(found.says).toMatch(/nothing holds it\. Hold it with [\d.]+ k?g/)
    expect(asked(lamp('screws', 3), 'timber-floats')).toEqual([])
    expect(theOne(lamp('screws', 0), 'one-face-flattened').says).toMatch(/Plane both faces/)
  })

  it('C26 the gates before mixing: bark off, flat on the base, held down, level, release', () => {
    const bad = planks(
      { bark: true, held: 'nothing' },
      { mould: { ...PLAIN.mould, liner: 'none', corners: [0, 3, 3, 0] } }
    )
    const stand = ids(bad)
    for (const id of ['bark-left', 'timber-floats', 'out-of-level', 'no-release']) expect(stand).toContain(id)
    expect(asked(bad, 'bark-left').every(f => f.severity === 'stop')).toBe(true)
    expect(ids(planks({}))).toEqual([])
  })

  it('C27 bark and a hard seal coat: the window is printed, never a bare yes or no', () => {
    const table = planks({ bark: true, sealed: 'hard' })
    expect(asked(table, 'bark-left')).toHaveLength(2)
    const [seal] = asked(table, 'seal-hard')
    expect(seal!.severity).toBe('caution')
    expect(seal!.says).toMatch(/while the coat is tacky, about 6 to 18 h .* sand it/)
    expect(seal!.basis).toMatch(/do not agree whether to seal/)
    expect(asked(planks({ sealed: 'hard', keyed: true }), 'seal-hard')).toEqual([])
    expect(asked(planks({ sealed: 'tacky' }), 'seal-hard')).toEqual([])
  })

  it('C40 charred edges: brush out, seal, then pour; flakes are likely, not certain', () => {
    const desk = planks({ charred: 1, sealed: 'no' })
    const [found] = asked(desk, 'char-loose')
    expect(found!.says).toMatch(/brush out and seal\. Brush, seal coat, then pour/)
    expect(found!.says).toMatch(/likely, not certain/)
    expect(asked(mended(desk, found!.fix!), 'char-loose')).toHaveLength(1)
    expect(asked(planks({ charred: 1, brushed: true }), 'char-loose')).toEqual([])
  })
})
