import { describe, expect, it } from 'vitest'
import { type CupOptions, readCupTest } from '../../src/piece/cup-readings.ts'
import { InputProblem } from '../../src/piece/problem.ts'

const read = (text: string, options: Partial<CupOptions> = {}) =>
  readCupTest(text, { source: 'cup.csv', ...options })
const said = (text: string, options: Partial<CupOptions> = {}): string => {
  try {
    read(text, options)
  } catch (e) {
    if (e instanceof InputProblem) return e.message
    throw e
  }
  return 'taken'
}
const COURSE = [
  [0, 22.1],
  [10, 22.9],
  [20, 24.6],
  [30, 28.3]
]

describe('readings of a cup test', () => {
  // The same course as people and loggers write it.
  const forms: [about: string, text: string, options?: Partial<CupOptions>][] = [
    ['minutes and °C between commas', 'min,temp (C)\n0,22.1\n10,22.9\n20,24.6\n30,28.3\n'],
    ['no header at all', '0,22.1\n10,22.9\n20,24.6\n30,28.3'],
    ['semicolons and decimal commas', 'Time (min);Temp °C\n0;22,1\n10;22,9\n20;24,6\n30;28,3\n'],
    ['tabs', 'minutes\ttemperature [°C]\n0\t22.1\n10\t22.9\n20\t24.6\n30\t28.3\n'],
    ['blanks', '0 22.1\n10 22.9\n20  24.6\n30 28.3\n'],
    ['commas in quotes', '"time, min","temp, °C"\n"0","22,1"\n"10","22,9"\n"20","24,6"\n"30","28,3"\n'],
    ['hours', 'time (h),temp (C)\n0,22.1\n0.16666667,22.9\n0.33333333,24.6\n0.5,28.3\n'],
    ['seconds', 'time_s,temp_C\n0,22.1\n600,22.9\n1200,24.6\n1800,28.3\n'],
    ['hours and minutes since mixing', 'elapsed,temp C\n0:00,22.1\n0:10,22.9\n0:20,24.6\n0:30,28.3\n'],
    ['the clock', 'clock,C\n14:05,22.1\n14:15,22.9\n14:25,24.6\n14:35,28.3\n'],
    ['the clock past midnight', 'time,temp (C)\n23:45,22.1\n23:55,22.9\n00:05,24.6\n0:15,28.3\n'],
    ['am and pm', 'time,temp (C)\n11:50 am,22.1\n12:00 pm,22.9\n12:10 pm,24.6\n12:20 pm,28.3\n'],
    [
      'dates',
      'when,temp (C)\n2026-11-27 23:50:00,22.1\n2026-11-28 00:00:00,22.9\n2026-11-28 00:10:00,24.6\n2026-11-28T00:20:00Z,28.3\n'
    ],
    ['units beside the numbers', 'time,temp\n0 min,22.1 C\n10 min,22.9°C\n20 min,24.6 °C\n30 min,28.3C\n'],
    [
      'comments and blank lines',
      '\ufeff# my cup\n\nmin,temp (C)\r\n0,22.1\r\n\r\n// a spill\n10,22.9\n20,24.6\n30,28.3\n'
    ],
    [
      'columns in another order',
      'temp (C),room (C),time (min)\n22.1,21,0\n22.9,21,10\n24.6,21,20\n28.3,21,30\n'
    ]
  ]
  it.each(forms)('%s', (_, text, options) => {
    const got = read(text, options)
    expect(got.unit).toBe('°C')
    expect(got.readings.map(r => r[0])).toEqual(COURSE.map(r => expect.closeTo(r[0]!, 3)))
    expect(got.readings.map(r => r[1])).toEqual(COURSE.map(r => r[1]))
  })

  it('°F stays as typed, with its unit', () => {
    const got = read('min,temp (F)\n0,71.8\n10,73.2\n20,76.3\n30,83\n')
    expect(got.unit).toBe('°F')
    expect(got.readings[3]).toEqual([30, 83])
  })

  it('counts from the time of mixing where it is told', () => {
    const text = 'clock,temp (C)\n14:05,22.1\n14:15,22.9\n14:25,24.6\n'
    expect(read(text, { mixed: '13:50' }).readings.map(r => r[0])).toEqual([15, 25, 35])
    expect(read(`# mixed: 1:50 pm\n${text}`).readings.map(r => r[0])).toEqual([15, 25, 35])
    expect(
      read('clock,temp (C)\n0:05,22.1\n0:15,22.9\n0:25,24.6\n', { mixed: '23:55' }).readings.map(r => r[0])
    ).toEqual([10, 20, 30])
  })

  it('takes what was seen, with a temperature or without', () => {
    const got = read(
      'min,temp (C),seen\n0,22,\n60,30,not strings yet\n75,,strings\n90,48,like honey\n110,88,no gel\n118,,gelled\n130,95,\n'
    )
    expect([got.stringsMin, got.gelledMin]).toEqual([75, 118])
    expect(got.readings.length).toBe(5)
    const bare = read('0,22\n60,30\n75,strings\n90,48\n118,gelled\n130,95\n')
    expect([bare.stringsMin, bare.gelledMin, bare.readings.length]).toEqual([75, 118, 4])
  })

  it('takes what its comments tell', () => {
    const got = read('# mass: 7 oz\n# cup: 80 mm\n# room: 70 °F\n# start = 22\n0,22\n10,23\n20,25\n')
    expect(got.told.massG).toBeCloseTo(198.45, 2)
    expect(got.told.diameterMm).toBe(80)
    expect(got.told.roomC).toBeCloseTo(21.11, 2)
    expect(got.told.startC).toBe(22)
  })

  it('averages what a logger wrote within one minute, and says so', () => {
    const got = read('time,temp (C)\n14:05,22\n14:05,22.2\n14:06,22.4\n14:07,23\n')
    expect(got.readings).toEqual([
      [0, 22.1],
      [1, 22.4],
      [2, 23]
    ])
    expect(got.says.join(' ')).toContain('averaged')
  })

  it('a column of the room gives its mean', () => {
    expect(read('min,temp (C),room (F)\n0,22,68\n10,23,70\n20,25,72\n').roomC).toBeCloseTo(21.11, 2)
  })
})

describe('°F or °C', () => {
  const hot = '0,72\n10,73\n20,76\n30,83\n'
  it('asks where °F may have been typed as °C', () => {
    expect(said(`min,temp (C)\n${hot}`)).toMatch(
      /line 2.*found 72 °C in fresh resin; allowed: .*if these are °F, say --unit F; if they are °C all the same, say --unit C/
    )
  })
  it('asks where no unit is named and either could be meant', () => {
    expect(said(hot)).toMatch(/found 72 without a unit in fresh resin/)
    // Later in a course resin may well be at 72 °C: still not guessed.
    expect(said('90,72\n100,88\n110,120\n')).toMatch(/found 72 without a unit/)
  })
  it('asks where °C may have been typed as °F', () => {
    expect(said('min,temp (F)\n0,22\n10,23\n20,26\n')).toMatch(/found 22 °F.*if these are °C, say --unit C/)
  })
  it('takes what was asked for', () => {
    expect(read(hot, { unit: '°F' }).unit).toBe('°F')
    const got = read(`min,temp (C)\n${hot}`, { unit: '°F' })
    expect([got.unit, got.says.join(' ')]).toEqual(['°F', expect.stringContaining('taken as °F')])
  })
  it('takes °C without a unit where it can be no other', () => {
    expect(read('0,22\n10,23\n20,25\n').says.join(' ')).toContain('taken as °C')
  })
})

describe('readings that cannot be used', () => {
  const cases: [about: string, text: string, says: RegExp][] = [
    ['an empty file', '', /found an empty file/],
    ['comments alone', '# nothing\n', /found an empty file/],
    ['a header alone', 'min,temp (C)\n', /found no reading/],
    ['one reading', 'min,temp (C)\n0,22\n', /found one reading; allowed: at least 3/],
    ['two', '0,22\n10,25\n', /found 2 readings/],
    ['all the same', 'min,temp (C)\n0,22\n10,22\n20,22\n', /the same temperature throughout, 22 °C/],
    [
      'out of order',
      'min,temp (C)\n0,22\n20,24\n10,23\n',
      /line 4.*found 10 min after 20 min; allowed: readings in order/
    ],
    ['a clock that goes back', 'clock,C\n14:05,22\n14:25,24\n14:15,23\n', /line 4.*in order of time/],
    ['before mixing', 'min,temp (C)\n-5,22\n0,24\n10,23\n', /found -5 as the time/],
    [
      'words for a temperature',
      'min,temp (C)\n0,22\n10,warm\n20,25\n',
      /line 3.*found "warm" as the temperature/
    ],
    ['words for a time', 'min,temp (C)\n0,22\nlater,23\n20,25\n', /line 3.*found "later" as the time/],
    [
      'hotter than resin can be',
      'min,temp (C)\n0,22\n10,2300\n20,25\n',
      /found 2300 °C; allowed: -10 to 350/
    ],
    ['colder', 'min,temp (C)\n0,22\n10,-40\n20,25\n', /found -40 °C/],
    ['two units', '0,72 F\n10,23 C\n20,25 C\n', /found °C after °F/],
    [
      'gelled before strings',
      '0,22\n10,gelled\n20,strings\n30,25\n40,29\n',
      /gelled before it pulled strings/
    ],
    [
      'decimal commas between commas',
      'min,temp (C)\n0,5,22,1\n10,5,22,9\n20,5,24,6\n',
      /decimal commas between commas/
    ],
    ['times written two ways', '0,22\n0:10,23\n20,25\n', /another way than the first/],
    ['a month of minutes', '0,22\n10,23\n99999,25\n', /at most 43200/],
    ['a mass that is none', '# mass: much\n0,22\n10,23\n20,25\n', /line 1.*found "much" as mass/],
    ['a binary file', '\u0000\u0001', /a binary file/],
    ['a line without end', `0,${'2'.repeat(5000)}\n`, /5002 characters in line 1/],
    ['too many lines', '0,22\n'.repeat(210_000), /210001 lines/]
  ]
  it.each(cases)('%s', (_, text, says) => {
    expect(said(text)).toMatch(says)
    for (const line of said(text).split('\n')) expect(line.length).toBeLessThan(400)
  })

  it('no text of nonsense does more than a message', () => {
    let seed = 7
    const next = (n: number): number => {
      seed = (seed * 1103515245 + 12345) % 2147483648
      return seed % n
    }
    const bits = [
      '0',
      '1',
      '23',
      ',',
      ';',
      '\t',
      '\n',
      ':',
      '.',
      '-',
      ' ',
      '°C',
      'F',
      '"',
      '#',
      'gel',
      'strings',
      'time',
      'temp',
      'room',
      'mass:',
      '99999999999',
      'pm',
      '\u2028'
    ]
    for (let i = 0; i < 3000; i++) {
      const text = Array.from({ length: next(60) }, () => bits[next(bits.length)]!).join('')
      const message = said(text)
      expect(message).not.toMatch(/undefined|NaN|\[object/)
    }
  })
})

describe('files as loggers and hurried people write them', () => {
  const read = (text: string) => readCupTest(text, { source: 'r.csv' })

  it('a title, a date beside the time, two channels', () => {
    const got = read(
      'Logger 12,serial 55\nDate,Time,Channel 1 (°C),Channel 2 (°C)\n' +
        '2026-11-27,22:00:00,21.0,21\n2026-11-27,23:30:00,25.6,21\n2026-11-28,00:30:00,47.1,21\n'
    )
    expect(got.readings).toEqual([
      [0, 21],
      [90, 25.6],
      [150, 47.1]
    ])
    expect(got.unit).toBe('°C')
    expect(got.says.join(' ')).toMatch(/header is line 2.*"Channel 2 \(°C\)" is left out/)
  })

  it('more than ten thousand readings are thinned by their means', () => {
    const rows = Array.from({ length: 30_000 }, (_, i) => `${i / 100},${(20 + i / 1000).toFixed(3)}`)
    const { readings, says } = read(`min,temp (C)\n${rows.join('\n')}\n`)
    expect(readings.length).toBe(1000)
    // The means of a straight line lie on it, and its mean is that of all.
    for (const [t, c] of readings) expect(c).toBeCloseTo(20 + t / 10, 2)
    expect(readings.reduce((sum, r) => sum + r[0], 0) / 1000).toBeCloseTo(149.995, 3)
    expect(says.join(' ')).toMatch(/30000 readings are thinned to 1000, each the mean of 30/)
  })

  it('one time throughout, and a clock that falls back, are told as such', () => {
    expect(() => read('min,temp (C)\n5,21\n5,24\n5,28\n')).toThrow(/all 3 readings at 5 min/)
    expect(() => read('time,temp (C)\n14:00,21\n13:30,25\n15:00,30\n')).toThrow(
      /line 3: found 13:30 after 14:00/
    )
  })
})
