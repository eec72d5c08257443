import { existsSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { answer } from '../src/main.ts'
import { SOUND, STOPPED, testFolder } from './folder.ts'

const { at, put } = testFolder()
const sound = put('sound.piece.json', JSON.stringify(SOUND))
const stopped = put('stopped.piece.json', JSON.stringify(STOPPED))
const AS_OF = ['--as-of', '2026-11-20T09:00+01:00']

describe('help and version', () => {
  it('without a word the commands are listed', () => {
    const { out, code } = answer([])
    expect(code).toBe(0)
    for (const name of ['new', 'check', 'plan', 'cast', 'cuts', 'prove', 'days', 'cup', 'list', 'schema'])
      expect(out).toContain(`  ${name} `)
  })

  for (const name of ['new', 'check', 'plan', 'cast', 'cuts', 'prove', 'days', 'cup', 'list', 'schema']) {
    it(`${name} has a page of its own, asked for in two ways`, () => {
      expect(answer([name, '--help']).out).toContain(`castwright ${name}`)
      expect(answer(['help', name]).out).toBe(answer([name, '-h']).out)
    })
  }

  it('the version is that of the package', () => {
    const own = JSON.parse(readFileSync(new URL('../package.json', import.meta.url), 'utf8')) as {
      version: string
    }
    expect(answer(['version']).out).toBe(`${own.version}\n`)
  })

  it('an unknown command names the nearest', () => {
    const { out, err, code } = answer(['chek', sound])
    expect([out, code]).toEqual(['', 2])
    expect(err).toBe(
      'castwright: found "chek"; allowed: new, check, plan, cast, cuts, prove, days, log, rescue, quote, cup, list, schema, serve, help, version; the nearest is check\n'
    )
  })
})

describe('check', () => {
  it('ends with 0 and the verdict when no stop stands', () => {
    const { out, code } = answer(['check', sound, ...AS_OF])
    expect(code).toBe(0)
    expect(out).toContain('a plain panel')
    expect(out).toContain('Nothing stands against it.')
  })

  it('ends with 1 when a stop stands, and says basis and fix', () => {
    const { out, code } = answer(['check', stopped, ...AS_OF])
    expect(code).toBe(1)
    expect(out).toMatch(/NOT READY TO POUR {2}\d+ stop/)
    expect(out).toContain('pours[0]')
    expect(out).toContain('basis')
    expect(out).toContain('fix')
  })

  it('--json gives the keys the design promises, and nothing that is no number', () => {
    const { out, code } = answer(['check', stopped, '--json', ...AS_OF])
    expect(code).toBe(1)
    const got = JSON.parse(out) as { verdict: string; totals: object; findings: Record<string, unknown>[] }
    expect(Object.keys(got)).toEqual(['verdict', 'totals', 'findings'])
    expect(got.verdict).toBe('stop')
    for (const f of got.findings)
      for (const key of [
        'id',
        'severity',
        'at',
        'says',
        'value',
        'unit',
        'band',
        'limit',
        'basis',
        'settledBy',
        'fix',
        'cases'
      ])
        expect(f).toHaveProperty(key)
    expect(out).not.toMatch(/NaN|Infinity|undefined/)
  })

  it('a shop beside the piece counts, another can be asked for, and what was measured counts', () => {
    const ids = (args: string[]) =>
      (
        JSON.parse(answer(['check', ...args, '--json', ...AS_OF]).out) as { findings: { id: string }[] }
      ).findings.map(f => f.id)
    expect(ids([sound])).toEqual([])
    const cold = put('cold.shop.json', JSON.stringify({ castwright: 1, climate: { night: 6, day: 9 } }))
    expect(ids([sound, '--shop', cold])).not.toEqual([])
    const readings = put(
      'wet.jsonl',
      `${JSON.stringify({ kind: 'corners', corners: [0, 3, 3, 0], id: 'r-0000001', at: '2026-11-20T08:00+01:00' })}\n`
    )
    expect(ids([sound, '--readings', readings])).not.toEqual([])
  })

  it('the same question gives the same bytes', () => {
    const ask = () => answer(['check', stopped, '--json', ...AS_OF]).out
    expect(ask()).toBe(ask())
  })
})

describe('new', () => {
  for (const kind of ['panel', 'tray', 'tabletop', 'dial', 'boards', 'lamp']) {
    it(`a ${kind} comes out as a file that has no stop`, () => {
      const path = at(`${kind}.piece.json`)
      expect(answer(['new', kind, '-o', path]).code).toBe(0)
      expect(answer(['check', path, ...AS_OF]).code).toBe(0)
      expect(JSON.parse(answer(['new', kind]).out)).toEqual(JSON.parse(readFileSync(path, 'utf8')))
    })
  }

  it('never overwrites a file', () => {
    const path = put('mine.json', 'mine')
    const { err, code } = answer(['new', 'tray', '-o', path])
    expect(code).toBe(2)
    expect(err).toContain('something that is there already')
    expect(readFileSync(path, 'utf8')).toBe('mine')
  })

  it('an unknown kind names the nearest', () => {
    const { err, code } = answer(['new', 'try'])
    expect(code).toBe(2)
    expect(err).toContain('the nearest is "tray"')
  })
})

describe('cast', () => {
  it('says how hot, when, and until when it can be worked', () => {
    const { out, code } = answer(['cast', sound, ...AS_OF])
    expect(code).toBe(0)
    for (const words of ['hottest', 'can be worked until', 'the next pour bonds', 'out of the mould'])
      expect(out).toContain(words)
  })

  it('lists every window with its band and the reading that sharpens it', () => {
    const { out } = answer(['cast', sound, ...AS_OF])
    for (const words of [
      'heat gun over the face',
      'colours can be drawn',
      'stones set on it stick',
      'for abrasive paper',
      'for the cutter',
      'into use'
    ]) {
      const [, after] = out.split(`  ${words}`)
      expect(after?.split('\n')[1], words).toMatch(/sharper by: .{10}/)
    }
    expect(out).toMatch(/the next pour bonds +from .+ \(.+ to .+\) to .+ \(.+ to .+\)/)
  })

  it('writes curves that a spreadsheet reads', () => {
    const folder = at('cast')
    expect(answer(['cast', sound, '--out', folder, ...AS_OF]).code).toBe(0)
    const rows = readFileSync(at('cast', 'cast.csv'), 'utf8').split('\r\n')
    expect(rows[0]).toBe('pour,minutes,hottest_C,viscosity_Pa_s,conversion')
    expect(rows.length).toBeGreaterThan(40)
    for (const row of rows.slice(1, -1)) expect(row).toMatch(/^"clear"(,[\d.e+-]+){4}$/)
    expect(existsSync(at('cast', 'cast.json'))).toBe(true)
  })

  it('--json holds windows and curves', () => {
    const got = JSON.parse(answer(['cast', sound, '--json', ...AS_OF]).out) as {
      pours: { cast: { peakC: number; curve: { min: number[] } } }[]
    }
    expect(got.pours[0]!.cast.peakC).toBeGreaterThan(15)
    expect(got.pours[0]!.cast.curve.min[0]).toBe(0)
  })
})

describe('list and schema', () => {
  it('lists every check once with what it looks for, finds a word, and offers the nearest', () => {
    const lines = answer(['list', 'checks']).out.trimEnd().split('\n')
    const ids = lines.map(l => l.split(/ {2,}/)[0]!)
    expect(new Set(ids).size).toBe(ids.length)
    // Of the piece, of its programs, and of cutters.
    for (const id of ['ratio-off', 'pin-in-path', 'program-unread', 'cut-not-made', 'edge-worn'])
      expect(ids).toContain(id)
    for (const l of lines) expect(l).toMatch(/^[a-z0-9-]+ {2,}\S+/)
    expect(answer(['list', 'checks', 'clamp']).out).toMatch(
      /^about +a program that runs a cutter into a clamp/m
    )
    expect(answer(['list', 'checks', 'cutter']).out).toMatch(/^part-in-path +a program that runs a cutter/m)
    expect(JSON.parse(answer(['list', 'check', 'pin-in-path', '--json']).out)).toMatchObject([
      { id: 'pin-in-path' }
    ])
    expect(answer(['list', 'checks', 'pin-in-pth']).err).toMatch(/the nearest is pin-in-path/)
  })

  it('lists a kind, finds a word, shows one row whole with its source', () => {
    expect(answer(['list', 'resin']).out).toMatch(/^deep /m)
    expect(answer(['list', 'timbers', 'oak']).out.split('\n').length).toBeGreaterThan(4)
    expect(answer(['list', 'timber', 'ash-white']).out).toMatch(/^source {2,}\S/m)
  })

  it('a word that nothing has names the nearest', () => {
    const { err, code } = answer(['list', 'timber', 'wallnut'])
    expect(code).toBe(2)
    expect(err).toMatch(/the nearest are .*walnut/)
  })

  for (const word of ['piece', 'shop', 'reading']) {
    it(`the schema of a ${word} is a JSON Schema`, () => {
      const page = JSON.parse(answer(['schema', word]).out) as { $schema: string }
      expect(page.$schema).toBe('https://json-schema.org/draft/2020-12/schema')
    })
  }
})

describe('arguments', () => {
  const refused: [string, string[], RegExp][] = [
    ['no piece', ['check'], /found nothing; allowed: one piece file/],
    ['two pieces', ['check', sound, sound], /allowed: one piece file/],
    ['an unknown option', ['check', sound, '--jsn'], /found --jsn; allowed: --json/],
    ['an option without its value', ['check', sound, '--shop'], /--shop with nothing after it/],
    ['a flag with a value', ['check', sound, '--json=yes'], /allowed: --json alone/],
    ['an option twice', ['check', sound, '--shop', 'a', '--shop', 'b'], /--shop twice/],
    [
      'a day that is none',
      ['check', sound, '--as-of', '2026-02-31T09:00Z'],
      /--as-of: found "2026-02-31T09:00Z"/
    ],
    ['a moment without offset', ['check', sound, '--as-of', '2026-02-21T09:00'], /with its offset/],
    ['a plan without a folder', ['plan', sound], /allowed: --out DIR/],
    [
      'a reason without an id',
      ['plan', sound, '--out', 'x', '--because', 'why not'],
      /--because without --despite/
    ],
    ['an id without a reason', ['plan', sound, '--out', 'x', '--despite', 'pour-heat'], /without a reason/],
    [
      'an id that is none',
      ['plan', sound, '--out', 'x', '--despite', 'pour-heet', '--because', 'cup test'],
      /the nearest is pour-heat/
    ],
    [
      'an empty reason',
      ['plan', sound, '--out', 'x', '--despite', 'pour-heat', '--because', ' '],
      /a reason of 0 characters/
    ],
    ['a schema of nothing', ['schema', 'cat'], /allowed: piece, shop, reading/],
    ['a list of nothing', ['list', 'cats'], /allowed: timber/]
  ]
  for (const [about, args, says] of refused) {
    it(`${about}: one message, code 2, nothing written`, () => {
      const { out, err, code } = answer(args)
      expect([out, code]).toEqual(['', 2])
      expect(err).toMatch(says)
      expect(err!.trimEnd().split('\n')).toHaveLength(1)
      expect(existsSync('x')).toBe(false)
    })
  }
})
