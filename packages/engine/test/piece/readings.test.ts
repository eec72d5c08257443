import { describe, expect, it } from 'vitest'
import { InputProblem } from '../../src/piece/problem.ts'
import { readReadings } from '../../src/piece/read.ts'
import { readingSchema } from '../../src/piece/reading-schema.ts'
import { schemaPage } from '../../src/piece/schema-page.ts'
import { chance } from '../stack/random.ts'
import type { Node } from './generate.ts'
import { resolved, valid } from './generate.ts'
import { READINGS } from './rich.ts'

const page = schemaPage(readingSchema) as Node
const kinds = resolved(page, page).oneOf!.map(branch =>
  String(resolved(page, branch).properties!['kind']!.const)
)
const line = (record: object) => `${JSON.stringify(record)}\n`
const lines = READINGS.map(line)
const file = lines.join('')
const note = { kind: 'note', id: 'r-note-01', at: '2026-11-28T12:00Z', note: 'é — 漢 😀 "quoted"\nnext line' }

describe('a file of readings', () => {
  it('has one record a line, read in the order they stand', () => {
    const { readings, unread } = readReadings(file, 'r.jsonl')
    expect(readings.map(r => r.kind)).toEqual(['moisture', 'poured', 'cup check'])
    expect(unread).toEqual([])
  })

  it.each(kinds)('takes a reading of the kind "%s", least and fullest', kind => {
    const branch = resolved(page, page).oneOf!.find(
      b => resolved(page, b).properties!['kind']!.const === kind
    )!
    for (const optional of [0, 0.5, 1]) {
      const drawn = valid(page, branch, chance(kinds.indexOf(kind) + 100), { optional, depth: 2 }) as object
      // What a schema cannot say: a sample weighs no more when it comes out of the oven.
      const record = 'wet' in drawn ? { ...drawn, dry: drawn.wet } : drawn
      const { readings, unread } = readReadings(line(record), 'r.jsonl')
      expect(unread).toEqual([])
      expect(readings).toHaveLength(1)
      expect(readings[0]!.kind).toBe(kind)
    }
  })

  it('reads typed units into numbers', () => {
    const record = {
      kind: 'height',
      id: 'r-000009',
      at: '2026-11-28T12:00Z',
      pour: 'top',
      height: '1 1/2 in'
    }
    expect(readReadings(line(record), 'r').readings[0]).toMatchObject({ height: 38.1 })
  })

  it('counts a record once that was sent twice', () => {
    expect(readReadings(file + file, 'r').readings).toHaveLength(READINGS.length)
  })

  it('keeps text of every script, and lines ended by a carriage return too', () => {
    const crlf = (file + line(note)).replaceAll('\n', '\r\n')
    expect(readReadings(crlf, 'r').readings[3]).toEqual(note)
  })

  it('survives a kill at every character of the last line: what was whole is there, the rest is said', () => {
    const last = line(note)
    for (let cut = 0; cut <= last.length; cut++) {
      const { readings, unread } = readReadings(file + last.slice(0, cut), 'r')
      // Without its line end the record is whole all the same.
      const whole = cut >= last.length - 1
      expect(readings, `cut at ${cut}`).toHaveLength(READINGS.length + (whole ? 1 : 0))
      expect(unread, `cut at ${cut}`).toEqual(
        whole || cut === 0 ? [] : [{ line: 4, why: 'cut off: left out' }]
      )
    }
  })

  it('takes an empty file, and blank lines, as no readings', () => {
    expect(readReadings('', 'r')).toEqual({ readings: [], unread: [] })
    expect(readReadings('\n \n\n', 'r')).toEqual({ readings: [], unread: [] })
  })

  it.each([
    ['a line that is no JSON', '{"kind": "note", oops}\n', 'r.jsonl line 2, column 18: found "oops"'],
    ['a record cut off with another after it', `{"kind": "no\n${line(note)}`, 'r.jsonl line 2, column 10'],
    ['a list', '[1]\n', 'r.jsonl line 2: found [1]; allowed: an object whose "kind" is one of'],
    ['an unknown kind', line({ ...note, kind: 'notes' }), 'r.jsonl line 2 at kind: found "notes"'],
    ['an unknown key', line({ ...note, noted: 1 }), 'r.jsonl line 2 at noted: found the unknown key "noted"'],
    ['a day no calendar has', line({ ...note, at: '2026-02-29T12:00Z' }), 'February 2026 has 28 days'],
    [
      'no offset',
      line({ ...note, at: '2026-02-20T12:00' }),
      'r.jsonl line 2 at at: found "2026-02-20T12:00"'
    ],
    ['a short id', line({ ...note, id: 'r1' }), 'r.jsonl line 2 at id: found "r1"'],
    [
      'a mass below nothing',
      line({ kind: 'poured', id: 'r-000003', at: note.at, pour: 'top', mass: -5 }),
      'r.jsonl line 2 at mass: found -5'
    ],
    [
      'a whole bad record at the end without a line end',
      line({ ...note, kind: 'x' }).trim(),
      'line 2 at kind'
    ]
  ])('says the number of the line of %s', (_, bad, words) => {
    let problem: unknown
    try {
      readReadings(lines[0]! + bad, 'r.jsonl')
    } catch (e) {
      problem = e
    }
    expect(problem).toBeInstanceOf(InputProblem)
    expect((problem as InputProblem).message).toContain(words)
    for (const one of (problem as InputProblem).message.split('\n')) expect(one.length).toBeLessThan(380)
  })

  it('offers the kind that was meant', () => {
    expect(() => readReadings(line({ ...note, kind: 'notes' }), 'r')).toThrow('for example "note"')
  })
})
