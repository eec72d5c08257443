import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { checkPiece, fullPlan, usualShop } from '@castwright/engine'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import type { Desk } from './desk.ts'
import { desk, pieceNamed } from './desk.ts'

const examples = join(import.meta.dirname, '..', '..', '..', 'examples')
const read = (name: string) => JSON.parse(readFileSync(join(examples, name), 'utf8'))
const asOf = '2026-11-20T09:00+01:00'
let d: Desk
beforeAll(async () => {
  d = await desk({ assets: () => ({ script: 'void 0', style: 'p{}', fonts: [] }) })
  const put = (id: string, document: unknown) =>
    d.ask('PUT', `/api/pieces/${id}`, { base: 0, edit: `sheet-${id}`, document })
  await put('sound00001', read('saltmarsh-panel.piece.json'))
  await put('stopped001', read('saltmarsh-panel.spoiled.piece.json'))
  await put('unusable01', pieceNamed('No outline', { pours: [] }))
})
afterAll(() => d.close())
const get = (path: string) =>
  d.ask('GET', `/api/pieces/${path}${path.includes('?') ? '&' : '?'}asOf=${encodeURIComponent(asOf)}`)

describe('sheets on demand', () => {
  test('the plan is the engine’s own', async () => {
    const plan = (await (await get('sound00001/plan.json')).json()) as {
      verdict: string
      totals: { massG: number }
    }
    const { plan: own } = fullPlan(
      { piece: checkPiece(read('saltmarsh-panel.piece.json'), 'x'), shop: usualShop() },
      { asOf }
    )
    expect(plan.verdict).toBe(own.verdict)
    expect(plan.totals).toEqual(own.totals)
  })
  test('page, run sheet and buy list come as what they are', async () => {
    for (const [sheet, type, words] of [
      ['page.html', 'text/html', '<!doctype html>'],
      ['run-sheet.html', 'text/html', '<!DOCTYPE html>'],
      ['run-sheet.md', 'text/markdown', '#'],
      ['buy.csv', 'text/csv', ',']
    ] as const) {
      const answer = await get(`sound00001/${sheet}`)
      expect(answer.status, sheet).toBe(200)
      expect(answer.headers.get('content-type')).toContain(type)
      expect(await answer.text()).toContain(words)
      if (type === 'text/html') {
        const policy = answer.headers.get('content-security-policy')!
        expect(policy).toContain('sandbox')
        expect(policy).toMatch(/style-src 'sha256-/)
        expect(policy).not.toMatch(/unsafe/)
      }
    }
  })
  test('what is printed comes as PDF on either paper, solids as a package', async () => {
    for (const sheet of [
      'run-sheet.pdf',
      'cup-labels.pdf',
      'drawing.pdf',
      'care.pdf',
      'buy-list.pdf',
      'templates.pdf'
    ])
      for (const paper of ['A4', 'letter']) {
        const answer = await get(`sound00001/${sheet}?paper=${paper}`)
        expect(answer.status, sheet).toBe(200)
        expect(answer.headers.get('content-type')).toBe('application/pdf')
        const bytes = Buffer.from(await answer.arrayBuffer())
        expect(bytes.subarray(0, 5).toString('latin1')).toBe('%PDF-')
      }
    const solid = await get('sound00001/solid.3mf')
    expect(
      Buffer.from(await solid.arrayBuffer())
        .subarray(0, 2)
        .toString('latin1')
    ).toBe('PK')
    expect((await get('sound00001/drawing.pdf?paper=A5')).status).toBe(400)
    expect((await get('stopped001/cup-labels.pdf')).status).toBe(409)
    expect((await get('stopped001/drawing.pdf')).status).toBe(200)
  })
  test('while a stop stands the run sheet is not written; with a reason for each it is', async () => {
    const refused = await get('stopped001/run-sheet.md')
    expect(refused.status).toBe(409)
    expect(((await refused.json()) as { error: { says: string } }).error.says).toMatch(
      /not written while a stop stands/
    )
    const plan = (await (await get('stopped001/plan.json')).json()) as {
      findings: { id: string; severity: string }[]
    }
    const stops = plan.findings.filter(f => f.severity === 'stop').map(f => f.id)
    expect(stops.length).toBeGreaterThan(0)
    const despite = stops.map(id => `despite=${id}&because=${encodeURIComponent('tried on a cup')}`).join('&')
    const sheet = await get(`stopped001/run-sheet.md?${despite}`)
    expect(sheet.status).toBe(200)
    expect(await sheet.text()).toContain('tried on a cup')
  })
  test('who opens a sheet that is not there reads why, as a page that runs nothing', async () => {
    const answer = await d.ask('GET', '/api/pieces/sound00001/quote.pdf', undefined, {
      accept: 'text/html,application/xhtml+xml,*/*;q=0.8'
    })
    expect(answer.status).toBe(422)
    expect(answer.headers.get('content-type')).toContain('text/html')
    expect(answer.headers.get('content-security-policy')).toMatch(/default-src 'none'.*style-src 'sha256-/)
    expect(await answer.text()).toMatch(/<p>No client is quoted while a price or a rate is missing: .*<\/p>/)
    const read = await d.ask('GET', '/api/pieces/sound00001/quote.pdf')
    expect(((await read.json()) as { error: { code: string } }).error.code).toBe('nothing')
  })
  test('a piece that cannot be planned says where, what was found and what is allowed', async () => {
    const answer = await get('unusable01/plan.json')
    expect(answer.status).toBe(422)
    expect(((await answer.json()) as { error: { says: string } }).error.says).toMatch(
      /outline.*found.*allowed/s
    )
  })
  test.each(['plan.json?asOf=yesterday', 'plan.json?despite=pour-heat'])(
    '%s is refused with words',
    async path => {
      expect((await d.ask('GET', `/api/pieces/sound00001/${path}`)).status).toBe(400)
    }
  )
})
