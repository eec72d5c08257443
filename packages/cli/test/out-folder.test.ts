import {
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  symlinkSync,
  writeFileSync
} from 'node:fs'
import { join } from 'node:path'
import * as paper from '@castwright/server/paper'
import { describe, expect, it } from 'vitest'
import { Failure } from '../src/failure.ts'
import { answer } from '../src/main.ts'
import { writeFolder } from '../src/out-folder.ts'
import { contents, SOUND, STOPPED, testFolder } from './folder.ts'
import { JPEG, PNG } from './photo.ts'

const { at, put } = testFolder()
const FILES = new Map([
  ['a.txt', 'one'],
  ['b.txt', 'two']
])
const NEXT = new Map([
  ['b.txt', 'TWO'],
  ['c.txt', 'THREE']
])

describe('writing a folder', () => {
  it('makes it, and leaves nothing but the files and their list', () => {
    const folder = at('deep', 'er')
    writeFolder(folder, FILES)
    expect(readdirSync(folder).sort()).toEqual(['.castwright.json', 'a.txt', 'b.txt'])
    expect(readFileSync(join(folder, 'b.txt'), 'utf8')).toBe('two')
  })

  it('replaces what it wrote, takes away what is no more, leaves the rest', () => {
    const folder = at('again')
    writeFolder(folder, FILES)
    writeFileSync(join(folder, 'mine.txt'), 'mine')
    writeFolder(folder, NEXT)
    const { '.castwright.json': list, ...rest } = contents(folder)
    expect(rest).toEqual({ 'b.txt': 'TWO', 'c.txt': 'THREE', 'mine.txt': 'mine' })
    expect(list).toContain('c.txt')
  })

  it.runIf(existsSync('/proc/self'))('ends where a folder is there and takes nothing (/proc)', () => {
    expect(() => writeFolder('/proc', FILES, true)).toThrow(/^\/proc: found .*Nothing was written$/)
  })

  it('refuses a file of another with one of its names, and changes nothing', () => {
    const folder = at('theirs')
    mkdirSync(folder)
    writeFileSync(join(folder, 'b.txt'), 'theirs')
    const before = contents(folder)
    expect(() => writeFolder(folder, FILES)).toThrow(/b\.txt: found a file that castwright did not write/)
    expect(contents(folder)).toEqual(before)
  })

  it('refuses a file where the folder should be, and a place where none can be made', () => {
    const file = put('plain', 'x')
    expect(() => writeFolder(file, FILES)).toThrow(Failure)
    expect(() => writeFolder(join(file, 'under'), FILES)).toThrow(/a file, not a folder/)
    symlinkSync(at('nowhere'), at('dangling'))
    expect(() => writeFolder(at('dangling'), FILES)).toThrow(/a link to nothing/)
    expect(readFileSync(file, 'utf8')).toBe('x')
  })

  it.runIf(existsSync('/proc/self'))('ends where no folder can be made', () => {
    expect(() => writeFolder('/proc/castwright', FILES)).toThrow(Failure)
  })

  it('a list that names places outside is not followed', () => {
    const folder = at('list')
    mkdirSync(folder)
    put('outside.txt', 'outside')
    writeFileSync(
      join(folder, '.castwright.json'),
      JSON.stringify({ files: ['../outside.txt', 'sub/x', '..'] })
    )
    writeFolder(folder, FILES)
    expect(readFileSync(at('outside.txt'), 'utf8')).toBe('outside')
  })
})

/** A folder as a run leaves it that was killed after `moves` of its moves: old list last out, new list last in. */
function killed(name: string, moves: number): { folder: string; whole: Record<string, string> } {
  const folder = at(name)
  writeFolder(folder, FILES)
  const whole = contents(folder)
  const next = at(`${name}-next`)
  writeFolder(next, NEXT)
  const waiting = join(folder, '.castwright-part')
  mkdirSync(join(waiting, 'old'), { recursive: true })
  mkdirSync(join(waiting, 'new'))
  for (const file of readdirSync(next)) renameSync(join(next, file), join(waiting, 'new', file))
  const steps: [string, string][] = [
    ...['a.txt', 'b.txt', '.castwright.json'].map((f): [string, string] => [
      join(folder, f),
      join(waiting, 'old', f)
    ]),
    ...['b.txt', 'c.txt', '.castwright.json'].map((f): [string, string] => [
      join(waiting, 'new', f),
      join(folder, f)
    ])
  ]
  for (const [from, to] of steps.slice(0, moves)) renameSync(from, to)
  return { folder, whole }
}

describe('a run that was killed', () => {
  for (let moves = 0; moves <= 6; moves++) {
    it(`after ${moves} of its 6 moves: the next run finds the old files or the new ones, and finishes`, () => {
      const { folder } = killed(`killed${moves}`, moves)
      writeFolder(folder, new Map([['d.txt', 'four']]))
      const { '.castwright.json': _, ...rest } = contents(folder)
      expect(rest).toEqual({ 'd.txt': 'four' })
    })

    it(`after ${moves} of its 6 moves: a next run that fails leaves one whole set`, () => {
      const { folder, whole } = killed(`failed${moves}`, moves)
      writeFileSync(join(folder, 'd.txt'), 'theirs')
      expect(() => writeFolder(folder, new Map([['d.txt', 'four']]))).toThrow(Failure)
      const { 'd.txt': theirs, ...rest } = contents(folder)
      expect(theirs).toBe('theirs')
      if (moves < 6) expect(rest).toEqual(whole)
      else expect(Object.keys(rest).sort()).toEqual(['.castwright.json', 'b.txt', 'c.txt'])
    })
  }
})

describe('a file beside those of an earlier run', () => {
  it('takes none of them away, and a later set still knows them', () => {
    const folder = at('beside')
    writeFolder(folder, FILES)
    writeFolder(folder, new Map([['again.txt', 'again']]), true)
    const { '.castwright.json': _, ...rest } = contents(folder)
    expect(rest).toEqual({ ...Object.fromEntries(FILES), 'again.txt': 'again' })
    writeFolder(folder, NEXT)
    expect(Object.keys(contents(folder)).sort()).toEqual(['.castwright.json', ...NEXT.keys()].sort())
  })

  for (let moves = 0; moves <= 4; moves++)
    it(`killed after ${moves} of its 4 moves leaves all the others`, () => {
      const folder = at(`beside${moves}`)
      writeFolder(folder, FILES)
      const waiting = join(folder, '.castwright-part')
      mkdirSync(join(waiting, 'old'), { recursive: true })
      mkdirSync(join(waiting, 'new'))
      writeFileSync(join(waiting, 'new', 'b.txt'), 'newer')
      writeFileSync(
        join(waiting, 'new', '.castwright.json'),
        JSON.stringify({ castwright: 1, files: ['a.txt', 'b.txt'], fresh: ['b.txt'] })
      )
      const to = (part: string, name: string) => join(waiting, part, name)
      const all: [string, string][] = [
        [join(folder, 'b.txt'), to('old', 'b.txt')],
        [join(folder, '.castwright.json'), to('old', '.castwright.json')],
        [to('new', 'b.txt'), join(folder, 'b.txt')],
        [to('new', '.castwright.json'), join(folder, '.castwright.json')]
      ]
      for (const [from, there] of all.slice(0, moves)) renameSync(from, there)
      writeFolder(folder, new Map([['d.txt', 'four']]), true)
      const { '.castwright.json': _, ...rest } = contents(folder)
      expect(Object.keys(rest).sort()).toEqual(['a.txt', 'b.txt', 'd.txt'])
      expect(rest['b.txt']).toBe(moves === 4 ? 'newer' : FILES.get('b.txt'))
    })
})

describe('plan', () => {
  const AS_OF = ['--as-of', '2026-11-20T09:00+01:00']
  const sound = put('sound.piece.json', JSON.stringify(SOUND))
  const stopped = put('stopped.piece.json', JSON.stringify(STOPPED))

  it('prints the run sheet where PDF files are written, while a stop stands only what is begun', () => {
    const folder = at('printed')
    expect(answer(['plan', sound, '--out', folder, ...AS_OF], paper).code).toBe(0)
    expect(readFileSync(join(folder, 'run-sheet.pdf')).subarray(0, 8).toString('latin1')).toBe('%PDF-1.7')
    expect(answer(['plan', stopped, '--out', folder, ...AS_OF], paper).code).toBe(1)
    expect(readdirSync(folder).filter(f => f.endsWith('.pdf'))).toEqual([])
  })

  it('shows the photos of the log in the record as made, and says which it has not', () => {
    const path = put('shown.piece.json', JSON.stringify({ ...SOUND, name: 'shown' }))
    const made = () => {
      const folder = at('shown')
      const { err, code } = answer(['plan', path, '--out', folder, ...AS_OF], paper)
      expect(code).toBe(0)
      return { err, pdf: readFileSync(join(folder, 'as-made.pdf')).toString('latin1') }
    }
    expect(answer(['log', path, 'photo', put('bench.jpg', JPEG), ...AS_OF]).code).toBe(0)
    const whole = made()
    // The picture stands in the file as it is (ISO 32000-1, 7.4.8), 8 px wide.
    expect(whole.pdf).toContain('/DCTDecode')
    expect(whole.pdf).toMatch(/\/Width 8\b/)
    expect(whole.pdf).toContain(Buffer.from(JPEG).toString('latin1'))
    expect(whole.err).not.toContain('photo')
    // One that was changed is no longer what the log tells of.
    const [name] = readdirSync(at('shown.photos'))
    writeFileSync(at('shown.photos', name!), PNG)
    const changed = made()
    expect(changed.pdf).not.toContain('/DCTDecode')
    expect(changed.err).toContain(`found no photo ${name!.slice(0, 24)}`)
  })

  it('writes page, buy list, plan and run sheets', () => {
    const folder = at('plan')
    const { code, err } = answer(['plan', sound, '--out', folder, ...AS_OF])
    expect(code).toBe(0)
    expect(err).toContain('written to')
    expect(readdirSync(folder).sort()).toEqual([
      '.castwright.json',
      'back.png',
      'buy-list.csv',
      'calendar.ics',
      'days.json',
      'front.png',
      'piece.html',
      'plan.json',
      'run-sheet.html',
      'run-sheet.md'
    ])
    const plan = JSON.parse(readFileSync(join(folder, 'plan.json'), 'utf8')) as {
      castwright: number
      asOf: string
    }
    expect(plan).toMatchObject({ castwright: 1, asOf: '2026-11-20T09:00+01:00' })
  })

  it('while a stop stands the run sheet goes, and an old one with it', () => {
    const folder = at('plan')
    const { code, err } = answer(['plan', stopped, '--out', folder, ...AS_OF])
    expect(code).toBe(1)
    expect(err).toContain('the run sheet is not written while a stop stands')
    expect(existsSync(join(folder, 'run-sheet.md'))).toBe(false)
    expect(existsSync(join(folder, 'piece.html'))).toBe(true)
  })

  it('while a stop stands, what is begun is written with what makes it safe', () => {
    const folder = at('begun')
    const readings = put(
      'begun.jsonl',
      `${JSON.stringify({ kind: 'mixed', pour: 'clear', id: 'r-0000001', at: '2026-11-20T08:00+01:00' })}\n`
    )
    expect(answer(['plan', stopped, '--out', folder, '--readings', readings, ...AS_OF]).code).toBe(1)
    expect(readdirSync(folder).sort()).toEqual([
      '.castwright.json',
      'back.png',
      'begun.html',
      'begun.md',
      'buy-list.csv',
      'days.json',
      'front.png',
      'piece.html',
      'plan.json'
    ])
    expect(readFileSync(join(folder, 'begun.md'), 'utf8')).toMatch(/safety data sheet/)
  })

  it('goes on despite its stops with a reason, and prints the reason on every sheet', () => {
    const folder = at('despite')
    const stops = (
      JSON.parse(answer(['check', stopped, '--json', ...AS_OF]).out) as {
        findings: { id: string; severity: string }[]
      }
    ).findings
      .filter(f => f.severity === 'stop')
      .map(f => f.id)
    const reasons = [...new Set(stops)].flatMap(id => [
      '--despite',
      id,
      '--because',
      `tried <${id}> in a cup`
    ])
    const { code } = answer(['plan', stopped, '--out', folder, ...reasons, ...AS_OF])
    expect(code).toBe(0)
    for (const name of ['run-sheet.md', 'run-sheet.html', 'piece.html', 'plan.json'])
      for (const id of stops)
        expect(
          readFileSync(join(folder, name), 'utf8')
            .replaceAll('&lt;', '<')
            .replaceAll('&gt;', '>')
            .replaceAll('\\<', '<')
            .replaceAll('\\>', '>')
        ).toContain(`tried <${id}> in a cup`)
  })

  it('a reason for what does not stand is left out and said so', () => {
    const { code, err } = answer([
      'plan',
      sound,
      '--out',
      at('idle'),
      '--despite',
      'pour-heat',
      '--because',
      'for nothing',
      ...AS_OF
    ])
    expect(code).toBe(0)
    expect(err).toContain('--despite pour-heat: no such finding stands')
    expect(readFileSync(join(at('idle'), 'run-sheet.md'), 'utf8')).not.toContain('for nothing')
  })

  it('the same plan gives the same bytes', () => {
    answer(['plan', sound, '--out', at('one'), ...AS_OF])
    answer(['plan', sound, '--out', at('two'), ...AS_OF])
    expect(contents(at('one'))).toEqual(contents(at('two')))
  })
})
