import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { answer } from '../src/main.ts'
import { testFolder } from './folder.ts'

const { at, put } = testFolder()
const example = (name: string) => join(import.meta.dirname, `../../../examples/${name}.piece.json`)
const shop = put('shop.json', JSON.stringify({ castwright: 1, timeZone: 'Europe/Berlin' }))
const AS_OF = ['--as-of', '2026-11-30T08:00+01:00', '--shop', shop]

describe('days', () => {
  it('tells the days of a piece on the clock of the shop, and writes a calendar file', () => {
    const {
      out,
      err = '',
      code
    } = answer(['days', example('saltmarsh-panel'), ...AS_OF, '--ics', at('days.ics')])
    expect(err).toContain('written')
    expect(code).toBe(0)
    expect(out).toContain('Monday 2026-11-30')
    expect(out).toContain('08:00-')
    expect(out).toMatch(/Ready \w{3} 20\d\d-\d\d-\d\d \d\d:\d\d/)
    const ics = readFileSync(at('days.ics'), 'utf8')
    expect(ics).toContain('BEGIN:VALARM')
    expect(ics.match(/BEGIN:VEVENT/g)!.length).toBeGreaterThan(40)
  })

  it('takes no piece twice', () => {
    const { err, code } = answer(['days', example('meadow-boards'), example('meadow-boards'), ...AS_OF])
    expect([code, err]).toEqual([2, expect.stringContaining('twice; allowed: each piece once')])
  })

  it('takes several pieces and gives JSON', () => {
    const { out, code } = answer([
      'days',
      example('saltmarsh-panel'),
      example('meadow-boards'),
      ...AS_OF,
      '--json'
    ])
    expect(code).toBe(0)
    const data = JSON.parse(out)
    expect(data.ready.length).toBe(2)
    expect(data.tasks.some((t: { piece: string }) => t.piece === '2')).toBe(true)
  })

  it('names what clashes where no hours of the bench ever occur', () => {
    const none = Object.fromEntries(['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'].map(d => [d, []]))
    const never = put('never.json', JSON.stringify({ castwright: 1, hours: none }))
    const { out, code } = answer([
      'days',
      example('meadow-boards'),
      '--as-of',
      '2026-11-30T08:00+01:00',
      '--shop',
      never
    ])
    expect(code).toBe(1)
    expect(out).toContain('hours at the bench')
  })

  it('tells other orders of the steps, why some are not to be done, and takes one', () => {
    const { out, code } = answer(['days', example('heron-table'), '--orders', ...AS_OF])
    expect(code).toBe(0)
    expect(out).toMatch(/The order as it stands is the best of \d+ that were planned/)
    expect(out).toMatch(/Coat both faces before “Flatten the front”: flattening or sanding takes the coat/)
    const taken = answer([
      'days',
      example('heron-table'),
      '--orders',
      '--take',
      '1',
      '-o',
      at('other.json'),
      ...AS_OF
    ])
    expect(taken.code).toBe(0)
    const document = JSON.parse(readFileSync(at('other.json'), 'utf8'))
    expect(document.steps.filter((s: { do: string }) => s.do === 'turn over').length).toBe(1)
    const { err, code: wrong } = answer(['days', example('heron-table'), '--take', '1', ...AS_OF])
    expect([wrong, err]).toEqual([2, expect.stringContaining('allowed with --orders alone')])
  })
})
