import { existsSync, lstatSync, readdirSync, readFileSync, symlinkSync } from 'node:fs'
import { readShop } from '@castwright/engine'
import { describe, expect, it } from 'vitest'
import { answer } from '../src/main.ts'
import { withCupTest, withResin } from '../src/shop-text.ts'
import { contents, testFolder } from './folder.ts'

const { at, put, home } = testFolder()

/** A made-up cup of a medium resin, °F, by the clock past midnight: 150 g in 60 mm at 22 °C. */
const READINGS = `# invented readings
# mass: 150 g
# cup: 60 mm
# room: 71.6 °F
clock,temp (F),seen
22:50,73.2,
23:10,79.9,
23:30,85.1,
23:50,92.8,
00:10,111.7,
00:20,138.2,strings
00:30,202.3,gelled
00:40,251.2,
00:50,250.2,
01:10,204,
01:30,155.1,
01:50,123.8,
`
const SHOP = `{ "castwright": 1,
  "climate": { "night": "62 °F", "day": 22.50 },
  "resins": [
    { "id": "other", "like": "thin" },
    { "id": "mine", "like": "medium",
      "potLife": { "minutes": "1 h" } }
  ]
}
`
const csv = put('cup.csv', READINGS)
const shop = put('shop.json', SHOP)

describe('castwright cup', () => {
  it('says what was learned, stores the readings as typed and leaves the rest of the shop alone', () => {
    const { out, err, code } = answer(['cup', csv, '--resin', 'mine', '--day', '2026-11-27'])
    expect(code).toBe(0)
    expect(out).toMatch(/^mine, by this cup\n\nYour resin is /)
    expect(out).toMatch(/Its heat is \d+ J\/g, between \d+ and \d+; the class has 320\./)
    expect(out).toMatch(/after +read, °C +fitted +off, K/)
    expect(err).toContain(`stored in ${shop}`)
    const text = readFileSync(shop, 'utf8')
    const test = readShop(text, shop).value.resins[1]!.cupTests[0]!
    expect([test.unit, test.mass, test.diameter, test.day]).toEqual(['°F', 150, 60, '2026-11-27'])
    expect(test.room).toBeCloseTo(22, 6)
    expect([test.strings, test.gelled]).toEqual([90, 100])
    expect(test.readings[0]).toEqual([0, 73.2])
    expect(test.readings[11]).toEqual([180, 123.8])
    // All that was typed before stands there still, to the letter.
    const [before, after] = [SHOP.slice(0, SHOP.indexOf('"1 h" }') + 7), SHOP.slice(SHOP.indexOf('}\n  ]'))]
    expect(text.startsWith(before)).toBe(true)
    expect(text.endsWith(after)).toBe(true)
  })

  it('a second test goes behind the first', () => {
    // The same cup, all a third sooner: a faster resin.
    const sooner = READINGS.replace(/^(\d\d):(\d\d)/gm, (_, h: string, m: string) => {
      const min = ((((Number(h) + 2) % 24) * 60 + Number(m) - 50) * 2) / 3
      return `${Math.floor(min / 60)}:${String(Math.round(min % 60)).padStart(2, '0')}`
    }).replace('clock', 'elapsed')
    const { out, err } = answer(['cup', put('sooner.csv', sooner), '--resin', 'mine'])
    expect(err).toContain('since mixing')
    expect(out).toMatch(/Your resin is [\d.]+ times faster than its class/)
    const tests = readShop(readFileSync(shop, 'utf8'), shop).value.resins[1]!.cupTests
    expect(tests.map(t => t.readings.at(-1)![0])).toEqual([180, 120])
  })

  it('--try stores nothing, --json gives the fit', () => {
    const before = contents(home)
    const { out, code } = answer([
      'cup',
      csv,
      '--resin',
      'mine',
      '--try',
      '--json',
      '--note',
      'again "so": it'
    ])
    expect(code).toBe(0)
    const given = JSON.parse(out) as { fit: { residuals: unknown[]; curve: unknown[] }; says: string[] }
    expect(given.fit.residuals.length).toBe(12)
    expect(given.fit.curve.length).toBeGreaterThan(20)
    expect(contents(home)).toEqual(before)
  })

  it('--like makes the resin, and the shop beside the readings', () => {
    const folder = testFolder()
    const file = folder.put('r.csv', READINGS)
    expect(answer(['cup', file, '--resin', 'new one', '--like', 'medium', '--room', '70 °F']).code).toBe(0)
    const text = readFileSync(folder.at('shop.json'), 'utf8')
    expect(text).toContain('"room": "70 °F"')
    expect(readShop(text, 'shop').value.resins[0]).toMatchObject({ id: 'new one', like: 'medium' })
  })

  it('follows a link to the shop, and leaves no part behind', () => {
    const folder = testFolder()
    const real = folder.put('real.json', SHOP)
    symlinkSync(real, folder.at('link.json'))
    expect(answer(['cup', csv, '--resin', 'mine', '--shop', folder.at('link.json')]).code).toBe(0)
    expect(lstatSync(folder.at('link.json')).isSymbolicLink()).toBe(true)
    expect(readFileSync(real, 'utf8')).toContain('cupTests')
    expect(readdirSync(folder.home).sort()).toEqual(['link.json', 'real.json'])
  })
})

describe('a cup test that should not be believed', () => {
  const folder = testFolder()
  const file = folder.put('r.csv', READINGS)
  const shopAt = folder.at('s1.json')
  const cup = (name: string, text: string, ...more: string[]) =>
    answer(['cup', folder.put(name, text), '--resin', 'mine', '--shop', shopAt, ...more])
  const head = '# mass: 100 g\n# cup: 60 mm\n# room: 21 C\nmin,temp (C)\n'

  it('--like makes the shop named, and the same readings are kept once', () => {
    expect(answer(['cup', file, '--resin', 'mine', '--like', 'medium', '--shop', shopAt]).err).toContain(
      `stored in ${shopAt}`
    )
    const before = readFileSync(shopAt, 'utf8')
    const again = answer(['cup', file, '--resin', 'mine', '--shop', shopAt])
    expect([again.code, again.err]).toEqual([
      0,
      expect.stringMatching(/already kept in .*, as test 1 of mine: nothing stored/)
    ])
    expect(readFileSync(shopAt, 'utf8')).toBe(before)
  })

  const rows = (of: (min: number) => number, from = 0): string =>
    Array.from({ length: 12 }, (_, i) => `${from + 10 * i},${of(10 * i).toFixed(1)}`).join('\n')
  it.each([
    [
      'a mark long after the readings',
      READINGS,
      ['--strings', '5000', '--gelled', '5100'],
      /strings at 3 d 11 h, readings that end at 3 h/
    ],
    ['a cup that only cools', head + rows(t => 60 - t / 10), ['--unit', 'C'], /never warmed/],
    ['a cup as cold as its room', head + rows(t => 18 + 3.5 * Math.min(1, t / 60)), [], /never warmed/],
    [
      'a reading far off its neighbours',
      READINGS.replace('85.1', '140'),
      [],
      /60 °C after 40 min, where the best fit shows/
    ],
    [
      '5 kg in a small cup',
      READINGS,
      ['--mass', '5000'],
      /5000 g in a cup of 60 mm: it would stand \d+ mm high/
    ],
    [
      '°F typed as °C, begun late',
      `${head}60,86\n70,90\n80,94\n90,100\n100,110\n120,117`,
      [],
      /86 °C as the first reading.*--unit F/
    ]
  ])('%s is refused, nothing stored', (_, text, more, says) => {
    const before = readFileSync(shopAt, 'utf8')
    const { out, err, code } = cup('odd.csv', `${text}\n`, ...more)
    expect([out, code]).toEqual(['', 2])
    expect(err).toMatch(says)
    expect(readFileSync(shopAt, 'utf8')).toBe(before)
  })

  it('may be looked at all the same, and says so', () => {
    const { out, err, code } = cup('odd.csv', READINGS.replace('85.1', '140'), '--try')
    expect([code, err]).toEqual([0, expect.stringContaining('nothing stored (--try)')])
    expect(out).toContain('Not to be believed as it stands')
  })

  it('tells units, moments told by hand, and one figure of the speed', () => {
    const { out } = cup('r.csv', READINGS, '--try')
    expect(out).toMatch(/speed, a thin film at 22 °C +times /)
    expect(out).toMatch(/heat of reaction +J\/g /)
    expect(out).toMatch(/strings: told 1 h 30, the fit .*its doubt/)
    expect(out).not.toMatch(/k1|k2|C1|exponent|speed against/)
    const told = /resin is ([\d.]+) times (faster|slower)/.exec(out)!
    const shown = /at 22 °C +times +([\d.]+)/.exec(out)!
    const one = told[2] === 'faster' ? Number(told[1]) : 1 / Number(told[1])
    expect(Number(shown[1]) / one).toBeCloseTo(1, 1)
  })
})

describe('what cannot be used: one message, code 2, nothing stored', () => {
  const file = (name: string, text: string): string => put(name, text)
  const rows = READINGS.replace(/^#.*\n/gm, '')
  const cases: [about: string, args: () => string[], says: RegExp][] = [
    ['no readings', () => ['--resin', 'mine'], /allowed: one file of readings/],
    ['no resin named', () => [csv], /found no --resin/],
    [
      'a resin the shop has not',
      () => [csv, '--resin', 'mina'],
      /found no resin "mina".*the nearest is "mine"/
    ],
    [
      'no mass',
      () => [file('m.csv', rows), '--resin', 'mine', '--cup', '60', '--room', '22'],
      /found no mass; allowed: --mass/
    ],
    ['a negative mass', () => [csv, '--resin', 'mine', '--mass=-150'], /at mass: found -150; allowed: /],
    ['a mass in mm', () => [csv, '--resin', 'mine', '--mass', '150 mm'], /at mass: found "150 mm"/],
    ['a room that burns', () => [csv, '--resin', 'mine', '--room', '220'], /at room: found 220/],
    [
      'gelled before strings',
      () => [csv, '--resin', 'mine', '--strings', '120'],
      /at gelled: found 100; allowed: later than strings at 120 min/
    ],
    ['a day of no calendar', () => [csv, '--resin', 'mine', '--day', '2026-02-30'], /at day/],
    [
      '°F that say °C',
      () => [file('f.csv', READINGS.replace('(F)', '(C)')), '--resin', 'mine'],
      /found 73\.2 °C in fresh resin; .*--unit F/
    ],
    [
      'no unit',
      () => [file('u.csv', READINGS.replace(' (F)', '')), '--resin', 'mine'],
      /73\.2 without a unit/
    ],
    ['a unit that is none', () => [csv, '--resin', 'mine', '--unit', 'X'], /--unit X; allowed: C or F/],
    [
      'out of order',
      () => [file('o.csv', READINGS.replace('00:40', '00:25')), '--resin', 'mine'],
      /line 13: found 00:25 after 00:30/
    ],
    ['an empty file', () => [file('e.csv', ''), '--resin', 'mine'], /an empty file/],
    ['one reading', () => [file('1.csv', '0,22\n'), '--resin', 'mine'], /one reading/],
    [
      'all the same',
      () => [file('s.csv', '0,22\n9,22\n20,22\n'), '--resin', 'mine'],
      /same temperature throughout/
    ],
    [
      'another class than the shop has',
      () => [csv, '--resin', 'mine', '--like', 'deep'],
      /--like deep; allowed: medium/
    ],
    [
      'a shop that is not there',
      () => [csv, '--resin', 'mine', '--shop', at('none.json')],
      /none\.json: found no such file/
    ]
  ]
  it.each(cases)('%s', (_, args, says) => {
    const given = args()
    const before = contents(home)
    const { out, err, code } = answer(['cup', ...given])
    expect([out, code]).toEqual(['', 2])
    expect(err).toMatch(says)
    expect(err).not.toMatch(/undefined|NaN|\[object/)
    expect(contents(home)).toEqual(before)
  })

  it('a resin of another family', () => {
    const other = put('other.json', '{"castwright":1,"resins":[{"id":"mine","family":"polyester"}]}')
    expect(answer(['cup', csv, '--resin', 'mine', '--shop', other]).err).toMatch(
      /found "mine", polyester.*allowed: an epoxy/
    )
    expect(existsSync(`${other}.castwright-part`)).toBe(false)
  })
})

describe('the shop’s text', () => {
  const test = '{ "mass": 1 }'
  it.each([
    [
      '{"castwright":1,"resins":[{"id":"a"}]}',
      '{"castwright":1,"resins":[{"id":"a", "cupTests": [{ "mass": 1 }]}]}'
    ],
    ['{"resins":[{"id":"a","cupTests":[]}]}', '{"resins":[{"id":"a","cupTests":[{ "mass": 1 }]}]}'],
    ['{"resins":[{"id":"a","cupTests":[{}]}]}', '{"resins":[{"id":"a","cupTests":[{}, { "mass": 1 }]}]}'],
    [
      '{"a": "]}\\"", "resins": [ {"id": "}"} ] }',
      '{"a": "]}\\"", "resins": [ {"id": "}", "cupTests": [{ "mass": 1 }]} ] }'
    ],
    [
      '\ufeff{ "n": [1, -2.5e3, null], "resins":[{\n  "id":"a"\n}]}',
      '\ufeff{ "n": [1, -2.5e3, null], "resins":[{\n  "id":"a",\n  "cupTests": [{ "mass": 1 }]\n}]}'
    ]
  ])('takes one more test: %j', (before, after) => {
    expect(withCupTest(before, 0, test)).toBe(after)
  })
  it.each([
    ['{"castwright":1}', '{"castwright":1, "resins": [{ "mass": 1 }]}'],
    ['{"castwright":1,\n  "resins": []\n}', '{"castwright":1,\n  "resins": [{ "mass": 1 }]\n}']
  ])('takes one more resin: %j', (before, after) => {
    expect(withResin(before, test)).toBe(after)
  })
})
