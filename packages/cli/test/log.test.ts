import { readFileSync, writeFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { answer } from '../src/main.ts'
import { appendReadings, readingsIn } from '../src/readings-file.ts'
import { SOUND, testFolder } from './folder.ts'

const { put, at } = testFolder()
const NOW = ['--as-of', '2026-12-05T14:00+01:00']
let n = 0
function piece() {
  const name = `log-${++n}`
  const path = put(`${name}.piece.json`, JSON.stringify({ ...SOUND, name }))
  const file = at(`${name}.readings.jsonl`)
  const log = (...words: string[]) => answer(['log', path, ...words, ...NOW])
  return {
    path,
    file,
    log,
    lines: () =>
      readFileSync(file, 'utf8')
        .trimEnd()
        .split('\n')
        .map(l => JSON.parse(l))
  }
}

describe('castwright log', () => {
  it('adds a reading in friendly words, and says where the build stands', () => {
    const { log, lines, path, file } = piece()
    expect(log('poured', 'clear', '812', 'g', '--at', '09:05').code).toBe(0)
    log('height', 'Clear', '19.2mm')
    log('gelled', 'clear')
    log('done', 'make', 'mould', '50', 'min')
    log('done', 'make mould')
    log('moisture', 'left', '9 %', 'pins')
    log('trouble', 'timber parted', 'left', '0.4 mm', '--note', 'at the far end')
    expect(lines()).toMatchObject([
      { kind: 'poured', pour: 'clear', mass: '812 g', at: '2026-12-05T09:05+01:00' },
      { kind: 'height', pour: 'clear', height: '19.2mm', at: '2026-12-05T14:00+01:00' },
      { kind: 'stage', pour: 'clear', stage: 'gelled' },
      { kind: 'done', step: 'make mould', minutes: '50 min' },
      { kind: 'done', step: 'make mould' },
      { kind: 'moisture', timber: 'left', moisture: '9 %', way: 'pins' },
      { kind: 'trouble', trouble: 'timber parted', of: 'left', by: '0.4 mm', note: 'at the far end' }
    ])
    const { out, code, err } = answer(['log', path, ...NOW])
    expect(code).toBe(0)
    expect(err).toBe('')
    expect(out).toMatch(/^log-1: \d+ of \d+ steps are done\./)
    expect(out).toContain('clear stands')
    expect(out).toContain('19.2 mm high as read')
    expect(out).toContain('Otherwise than planned')
    expect(new Set(lines().map(l => l.id)).size).toBe(7)
    // Every later command reads the same file.
    expect(answer(['check', path, '--readings', file, ...NOW]).code).toBeLessThan(2)
  })

  it('takes back by one more record', () => {
    const { log, lines } = piece()
    log('height', 'clear', '3')
    expect(log().out).toContain('3.0 mm high as read')
    log('withdrawn', 'last')
    expect(lines()[1]).toMatchObject({ kind: 'withdrawn', reading: lines()[0].id })
    expect(log().out).not.toContain('3.0 mm high')
  })

  it('keeps the lot something was mixed from, with nothing else', () => {
    const { log, lines } = piece()
    log('mixed', 'clear', '300 g', '--lot', 'K2')
    expect(lines()[0]).toMatchObject({ kind: 'mixed', mass: '300 g', lot: 'K2' })
    expect(log('height', 'clear', '3', '--lot', 'K2').err).toContain('allowed: with "mixed"')
    expect(lines()).toHaveLength(1)
  })

  it.each([
    [['hieght', 'clear', '3'], 'found "hieght"; allowed: a kind of reading: mixed, poured'],
    [['height', 'cleer', '3'], 'found "cleer 3"; allowed: a pour: clear; for example "clear"'],
    [['height', 'clear'], 'found nothing more; allowed: a length for height, such as "11.2 mm"'],
    [['height', 'clear', '3 kg'], 'found "3 kg"; allowed: a length for height, such as "11.2 mm"'],
    [['poured', 'clear', '2 tons'], 'found "2 tons"; allowed: a mass for mass, such as "300 g"'],
    [['height', 'clear', '-5'], 'from 0 to 1000 mm'],
    [['gelled', 'clear', '--at', '2027-12-05T10:00+01:00'], 'yet to come; allowed: a moment up to now'],
    [['gelled', 'clear', '--at', '14:01'], 'yet to come'],
    [['height', 'clear', '3000'], 'from 0 to 1000 mm'],
    [['demoulded', 'now'], 'found "now" after it; allowed: demoulded'],
    [['trouble', 'leek'], 'height short, height over'],
    [['done', 'pour', 'green'], 'a step: '],
    [['gelled', 'clear', '--at', 'noon'], '--at: found "noon"; allowed: now, HH:MM of today']
  ])('says of %j what is allowed, and logs nothing', (words, says) => {
    const { log, path } = piece()
    const { err, code } = log(...words)
    expect(code).toBe(2)
    expect(err).toContain(says)
    expect(readingsIn(path.replace('.piece.json', '.readings.jsonl')).readings).toEqual([])
  })

  it('keeps the last whole record of a log that was cut off anywhere, says so, and goes on', () => {
    const { log, file, lines } = piece()
    log('height', 'clear', '19')
    const whole = readFileSync(file)
    log('note', 'größer — 漢 😀')
    const both = readFileSync(file)
    for (let cut = whole.length + 1; cut < both.length - 1; cut += 3) {
      writeFileSync(file, both.subarray(0, cut))
      const { err, code } = log('gelled', 'clear')
      expect(code, `cut at ${cut}`).toBe(0)
      expect(err).toContain('its last record was cut off and is left out')
      expect(
        lines().map(l => l.kind),
        `cut at ${cut}`
      ).toEqual(['height', 'stage'])
    }
    // Whole but for its line's end: it stays.
    writeFileSync(file, both.subarray(0, -1))
    log('gelled', 'clear')
    expect(lines().map(l => l.kind)).toEqual(['height', 'note', 'stage'])
  })

  it('keeps and tells a clock that went backwards, and readings that contradict each other', () => {
    const { log, lines, path } = piece()
    log('began', 'pour clear')
    const { err, out } = answer(['log', path, 'done', 'pour clear', '--as-of', '2026-12-05T11:00+01:00'])
    expect(err).toContain('the clock has gone backwards')
    expect(out).toContain(
      '“pour clear” was done before it was begun: 2026-12-05 11:00 against 2026-12-05 14:00'
    )
    log('height', 'clear', '19')
    expect(log('height', 'clear', '15').out).toContain('clear was read 19.0 mm high, and 15.0 mm at')
    expect(lines()).toHaveLength(4)
  })

  it('gives the state as JSON', () => {
    const { log } = piece()
    const state = JSON.parse(log('--json').out)
    expect(state).toMatchObject({ next: 0, changed: [], contradictions: [], stands: [] })
    expect(state.steps[0]).toMatchObject({ key: 'make mould', progress: 'left' })
  })

  it('writes each record whole: what was there is never written again', () => {
    const file = at('plain.readings.jsonl')
    const record = (i: number) => ({ id: `reading-${i}`, at: '2026-12-05T14:00Z', kind: 'note' })
    for (let i = 0; i < 5; i++) {
      const before = readingsIn(file).readings.length === 0 ? '' : readFileSync(file, 'utf8')
      expect(appendReadings(file, [record(i)])).toBe(null)
      expect(readFileSync(file, 'utf8')).toBe(`${before}${JSON.stringify(record(i))}\n`)
    }
  })
})
