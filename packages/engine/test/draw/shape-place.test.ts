import { describe, expect, it } from 'vitest'
import { shapeMirrored, shapeMoved, shapeTurned } from '../../src/draw/board.ts'
import { mirrorX, mirrorY, rotate, translate } from '../../src/shape/transform.ts'
import { chance } from '../stack/random.ts'
import { FORMS, regionFor } from './forms.ts'
import { symmetricDifference } from './same-region.ts'

describe.each(FORMS)('a %s', (form, s) => {
  const before = regionFor(s)
  // Curves are flattened anew: a thousandth of a mm along an outline of a few hundred.
  const close = 0.6

  it('moves and turns as its region does', () => {
    const c = chance(51)
    for (let k = 0; k < 20; k++) {
      const [dx, dy, deg] = [
        c.span(-90, 90),
        c.span(-90, 90),
        c.is(0.3) ? 90 * c.whole(-5, 5) : c.span(-700, 700)
      ]
      expect(symmetricDifference(regionFor(shapeMoved(s, dx, dy)), translate(before, dx, dy))).toBeLessThan(
        close
      )
      const got = shapeTurned(s, deg, [dx, dy])
      expect(symmetricDifference(regionFor(got), rotate(before, deg, dx, dy))).toBeLessThan(close)
      const back = shapeMoved(shapeMoved(s, 12.5, -3), -12.5, 3)
      expect(symmetricDifference(regionFor(back), before)).toBeLessThan(close)
    }
  })

  it('mirrors as its region does', () => {
    for (const c of [0, 17.5, -60]) {
      const x = shapeMirrored(s, 'x', c)
      const y = shapeMirrored(s, 'y', c)
      if (form === 'file') {
        expect([x, y]).toEqual([null, null])
        continue
      }
      expect(symmetricDifference(regionFor(x!), mirrorX(before, c))).toBeLessThan(close)
      expect(symmetricDifference(regionFor(y!), mirrorY(before, c))).toBeLessThan(close)
      expect(Object.keys(x!).find(k => k === form || k === 'polygon')).toBe(
        form === 'holes' ? 'polygon' : form
      )
    }
  })
})

describe('what was typed', () => {
  it('stays where a coordinate does not change', () => {
    expect(shapeMoved({ circle: 10, at: ['1 in', '2 in'] }, 5, 0)).toEqual({ circle: 10, at: [30.4, '2 in'] })
    expect(shapeMoved({ circle: '1 in' }, 0, 0)).toEqual({ circle: '1 in' })
    expect(shapeTurned({ rectangle: [2, 1] }, 360, [0, 0])).toEqual({ rectangle: [2, 1] })
    expect(
      shapeMirrored(
        {
          polygon: [
            ['1 in', 0],
            [0, '-2 in'],
            [3, 3]
          ]
        },
        'x',
        0
      )
    ).toEqual({
      polygon: [
        [-3, 3],
        [0, '-2 in'],
        ['-1 in', 0]
      ]
    })
  })
})
