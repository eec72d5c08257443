import { createHash } from 'node:crypto'
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { answer } from '../src/main.ts'
import { appendReadings, readingsIn } from '../src/readings-file.ts'
import { contents, SOUND, testFolder } from './folder.ts'
import { JPEG, PNG } from './photo.ts'

const { put, at, home } = testFolder()
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

  it('keeps the picture of a photo beside the log, by the name of its content, once', () => {
    const { log, lines, file } = piece()
    const folder = file.replace('.readings.jsonl', '.photos')
    const taken = put('first pour.jpg', JPEG)
    expect(log('photo', taken, '--note', 'the first bubbles')).toMatchObject({ code: 0 })
    // The head of the SHA-256 (FIPS 180-4) of its bytes, by the crypto module of Node.
    const name = createHash('sha256').update(JPEG).digest('hex').slice(0, 24)
    expect(lines()).toMatchObject([{ kind: 'photo', photo: name, note: 'the first bubbles' }])
    expect(readdirSync(folder)).toEqual([`${name}.jpg`])
    expect(new Uint8Array(readFileSync(`${folder}/${name}.jpg`))).toEqual(JPEG)
    // Again, and under a name that says something else: what counts is what is in it.
    log('photo', put('same.png', JPEG))
    log('photo', ...put('two words.txt', PNG).split(' '))
    expect(lines().map(l => l.kind)).toEqual(['photo', 'photo', 'photo'])
    expect(readdirSync(folder).map(f => f.slice(-4))).toEqual(expect.arrayContaining(['.jpg', '.png']))
    expect(readdirSync(folder)).toHaveLength(2)
  })

  it.each([
    ['nothere.jpg', null, 'found no such file or folder; allowed: a file that can be read'],
    ['words.jpg', 'no picture at all, whatever its name says', 'allowed: PNG, JPEG or WebP'],
    ['cut.jpg', JPEG.subarray(0, 40), 'allowed: PNG, JPEG or WebP'],
    ['.', null, 'found a folder; allowed: a file'],
    ['large.jpg', new Uint8Array(12_000_001), 'found 12 MB; allowed: at most 12 MB']
  ])('a photo that is none (%s) is refused, and nothing is written', (name, content, says) => {
    const { log, file } = piece()
    const path = content === null ? at(name) : put(name, content)
    const before = Object.keys(contents(home)).sort()
    const { code, err } = log('photo', path)
    expect(code).toBe(2)
    expect(err).toContain(path)
    expect(err).toContain(says)
    expect(err).toContain('Nothing was logged')
    expect(Object.keys(contents(home)).sort()).toEqual(before)
    expect(readingsIn(file).readings).toEqual([])
  })

  it('a log that cannot be added to leaves no photo behind', () => {
    const { log, file } = piece()
    mkdirSync(file)
    expect(log('photo', put('lost.jpg', JPEG)).code).toBe(2)
    expect(existsSync(file.replace('.readings.jsonl', '.photos'))).toBe(false)
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
