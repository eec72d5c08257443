import { describe, expect, it } from 'vitest'
import { commentLines, messageLine, plain } from '../../../src/cuts/write/ascii.ts'
import { writeProgram } from '../../../src/cuts/write/write-program.ts'
import { checkShop } from '../../../src/piece/read.ts'
import { chance } from '../../stack/random.ts'
import { dialect, program, run, tiny } from './sample.ts'
import { scan } from './scan.ts'

describe('words in a comment', () => {
  it('are plain letters, without brackets and without signs that a control takes for orders', () => {
    expect(plain('Möwe (Ø 8 × 12 mm) – 50 %!')).toBe('Mowe - dia 8 x 12 mm - 50 percent.')
    expect(plain('Straße, Çevre, Łódź, 木')).toBe('Strasse, Cevre, Lodz, _')
    expect(plain('  two\n lines\t ')).toBe('two lines')
    const c = chance(7)
    for (let k = 0; k < 500; k++) {
      const text = Array.from({ length: 60 }, () => String.fromCodePoint(c.whole(1, 0x2fff))).join('')
      expect(plain(text)).toMatch(/^[A-Za-z0-9 .,:+\-/='_]*$/)
    }
  })

  it('break between words, and in a word that fills a line', () => {
    const long = commentLines(`${'word '.repeat(100)}${'x'.repeat(450)}`)
    expect(long.every(l => l.length <= 200)).toBe(true)
    expect(long.join(' ').match(/word/g)).toHaveLength(100)
    expect(long.join('').match(/x/g)).toHaveLength(450)
    expect(commentLines('short')).toEqual(['(short)'])
    expect(commentLines('')).toEqual([])
    expect(messageLine('y'.repeat(400)).length).toBeLessThanOrEqual(200)
  })

  it('of a hostile name stay words', () => {
    const name = ') M3 S9000 (\nG0 Z-50 %$!~?'
    const evil = program([run(tiny(), { words: name, parts: [{ name, path: tiny(), topMm: 0 }] })], {
      name, piece: name, setting: [name], zero: [name], holding: [name], notes: [name], machine: name, safety: [name]
    }) // biome-ignore format: a list
    const good = scan(writeProgram(program([run(tiny())]), dialect()).text)
    expect(scan(writeProgram(evil, dialect()).text).words).toEqual(good.words)
  })
})

describe('a header', () => {
  const text = writeProgram(
    program([run(tiny())], {
      safety: ['No gloves at a turning cutter. Gives way to the manual of the machine.']
    }),
    dialect({ zero: 'bed' })
  ).text

  it.each([
    ['what the zero is', /Zero: X0 Y0 is the middle of the outline/],
    [
      'what the heights start from, in numbers',
      /Zero of heights: the bed. The face to be worked ends at Z28.0 mm/
    ],
    ['the cutter', /Cutter 1: straight cutter 6, two edges, 6.0 mm across, 18000 turns a minute/],
    ['how it is held', /Held: tape/],
    ['how deep it goes', /Deepest: Z24.0 mm, 24.0 above the bed/],
    ['how far it goes', /The tip goes: X5.0 to X25.0, Y0.0 to Y10.0, Z24.0 to Z34.4 mm/],
    ['how long it takes', /Takes about 4 min/],
    ['the dialect', /Dialect: RS-274, mm, 3 decimals, absolute/],
    ['safety lines', /Safety: .*manual of the machine/]
  ])('says %s', (_, line) => {
    expect(text).toMatch(line)
  })

  it('has no clock and no promise', () => {
    expect(text).not.toMatch(/20[0-9][0-9]-|safe to run|food safe/i)
  })

  it('says in inches what is written in inches', () => {
    const inch = writeProgram(program([run(tiny())]), dialect({ units: 'inch' })).text
    expect(inch).toMatch(/Deepest: Z-0.1575 in, 0.9449 above the bed/)
  })

  it('is left out with the comments, and the program stays', () => {
    const bare = writeProgram(program([run(tiny())]), dialect({ comments: false })).text
    expect(bare).not.toContain('(')
    const full = scan(writeProgram(program([run(tiny())]), dialect()).text)
    expect(scan(bare).words).toEqual(full.words)
  })
})

describe('a dialect that is no dialect', () => {
  const shop = (change: object) => () =>
    checkShop({ castwright: 1, machine: { x: 800, y: 600, program: change } }, 'shop')

  it.each([
    [{ units: 'cm' }, /machine.program.units: found .*cm.*allowed: .*mm.*inch/],
    [{ unit: 'mm' }, /machine.program.*unit.*units/],
    [{ decimals: 7 }, /machine.program.decimals: found 7; allowed: .*2.*6/],
    [{ units: 'inch', decimals: 2 }, /machine.program.decimals: found 2; allowed: 3 to 6 in inches/],
    [{ startLines: ['G64 (open'] }, /startLines\[0\].*comments in one pair of brackets/],
    [{ startLines: ['G0 X1; up'] }, /startLines\[0\].*";" stands in no program/],
    [{ endLines: ['M30'] }, /endLines\[0\].*no M2 and no M30/],
    [{ endLines: ['m 02'] }, /endLines\[0\].*no M2 and no M30/],
    [{ startLines: ['%1'] }, /startLines\[0\].*% alone/],
    [{ startLines: ['é'] }, /startLines\[0\]/],
    [{ startLines: ['G'.repeat(201)] }, /startLines\[0\]/],
    [{ startLines: Array(21).fill('G64') }, /startLines.*20/],
    [{ ending: '.NC' }, /ending/],
    [{ spindleWait: -1 }, /spindleWait/],
    [{ lift: 0 }, /lift/]
  ] as const)('%j', (change, message) => {
    expect(shop(change)).toThrow(message)
  })

  it.each([
    [{ startLines: ['%', 'O1000', 'G64 P0.01 (rounds corners)', '#1=[2*3]'] }],
    [{ endLines: ['M20', 'G53 G0 Z0', '%'] }],
    [{ lift: '1/4 in', decimals: 2 }]
  ])('%j is one', change => {
    expect(shop(change)).not.toThrow()
  })

  it('has defaults that any control takes', () => {
    const read = checkShop({ castwright: 1, machine: { x: 800, y: 600 } }, 'shop').value.machine!.program
    expect(read).toMatchObject({
      units: 'mm',
      arcs: true,
      cycles: false,
      lift: 5,
      spindleWait: 4,
      ending: 'nc'
    })
  })
})
