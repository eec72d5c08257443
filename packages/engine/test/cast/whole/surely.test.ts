import { describe, expect, it } from 'vitest'
import { check } from '../../../src/plan.ts'
import { surelyChecked } from '../../../src/whole.ts'
import { tray } from './mould.ts'

const asOf = '2026-11-01T08:00Z'
const heat = (found: ReturnType<typeof check>) => found.findings.find(f => f.id === 'pour-heat')

describe('a stop by heat', () => {
  it('of a tall narrow block is taken back where the whole mould stays cool enough', () => {
    const input = tray([60, 60], {
      mould: { margin: 0 },
      pours: [{ id: 'block', resin: 'deep', depth: 110 }]
    })
    expect(heat(check(input, { asOf }))?.severity).toBe('stop')
    const sure = surelyChecked(input, { asOf })
    expect(heat(sure)?.severity).not.toBe('stop')
  })

  it('of a wide pour stands', () => {
    const input = tray([400, 300], { pours: [{ id: 'slab', resin: 'medium', depth: 40 }] })
    expect(heat(surelyChecked(input, { asOf }))?.severity).toBe('stop')
  })

  it('is the column’s own where none stands', () => {
    const input = tray([200, 160], { pours: [{ id: 'thin', resin: 'deep', depth: 10 }] })
    expect(surelyChecked(input, { asOf })).toEqual(check(input, { asOf }))
  })
})
