import { describe, expect, it } from 'vitest'
import { checkPiece, usualShop } from '../../src/piece/read.ts'
import { plan } from '../../src/plan.ts'

const asked = (pour: object) => () =>
  plan(
    {
      piece: checkPiece(
        {
          castwright: 1,
          name: 'a thin strip',
          outline: { rectangle: [60, 3] },
          mould: { margin: 0 },
          pours: [pour]
        },
        'piece'
      ),
      shop: usualShop(),
      source: 'piece'
    },
    { asOf: '2026-11-01T08:00Z', effort: 'preview' }
  )

describe('stones that leave no room for resin', () => {
  const boulder = { kind: 'river-gravel', placed: [{ at: [0, 0], size: [500, 400, 300] }] }
  for (const amount of [{ depth: 10 }, { mass: 20 }, { height: 8 }])
    it(`are refused in words for a pour given by ${Object.keys(amount)[0]}`, () => {
      expect(asked({ resin: 'medium', ...amount, stones: [boulder] })).toThrow(
        /pours\[0\]\.(stones: found stones of|mass: found)/
      )
    })

  it('are let pass when they leave some', () => {
    const pebble = { kind: 'river-gravel', placed: [{ at: [0, 0], size: [3, 2, 2] }] }
    expect(asked({ resin: 'medium', depth: 10, stones: [pebble] })).not.toThrow()
  })
})
