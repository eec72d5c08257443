import { describe, expect, it } from 'vitest'
import { Complaints } from '../../../src/proving/read/complaint.ts'
import { readProgram } from '../../../src/proving/read/read-program.ts'
import { Scanner } from '../../../src/proving/read/scanner.ts'
import { randomFrom } from '../../shape/random.ts'

const COUNT = 10_000

function scanned(text: string): number {
  const scanner = new Scanner(text, new Complaints())
  scanner.line(0, text.length)
  return scanner.number()
}

const digits = (random: () => number, most: number): string =>
  Array.from({ length: Math.floor(random() * (most + 1)) }, () => Math.floor(random() * 10)).join('')

// The twin: the language's own correctly rounded conversion of the text without its spaces.
describe('numbers', () => {
  it(`are read to the last bit as the language reads them, ${COUNT} seeded ones of up to 30 digits`, () => {
    const random = randomFrom(11)
    for (let n = 0; n < COUNT; n++) {
      const most = random() < 0.7 ? 6 : 15
      const whole = digits(random, most)
      const text = `${['', '-', '+'][Math.floor(random() * 3)]}${whole}${whole === '' || random() < 0.7 ? `.${digits(random, most)}0` : ''}`
      let spaced = ''
      for (const c of text) spaced += random() < 0.1 ? `${c}${random() < 0.5 ? ' ' : '\t'}` : c
      expect(Object.is(scanned(spaced), Number(text)), text).toBe(true)
    }
  })

  it('hard cases are correctly rounded', () => {
    for (const text of [
      '0.1',
      '9007199254740993',
      '0.30000000000000004',
      '123456.789012345678',
      '000000000000000000000001.5',
      '.000000000000000000000000001',
      '5.',
      '-0',
      '179769.313486231570814527423731704356798070'
    ])
      expect(Object.is(scanned(text), Number(text)), text).toBe(true)
  })

  it('what is no number is an error, what is one is read: 3,000 seeded strings of digits, points, signs and spaces', () => {
    const random = randomFrom(12)
    const alphabet = '0123456789..+- \t'
    let sound = 0
    for (let n = 0; n < 3000; n++) {
      let text = ''
      for (let k = Math.ceil(random() * 6); k > 0; k--)
        text += alphabet[Math.floor(random() * alphabet.length)]
      const bare = text.replace(/[ \t]/g, '')
      const isNumber = /^[+-]?(\d+\.?\d*|\.\d+)$/.test(bare)
      const { motions, facts } = readProgram(`G21 G0 Y0 Z0 X${text}\nM2`)
      expect(facts.errors, JSON.stringify(text)).toBe(isNumber ? 0 : 1)
      if (isNumber) {
        sound++
        expect(motions.x[0]! + 0, text).toBe(Number(bare) + 0)
      }
    }
    expect(sound).toBeGreaterThan(600)
  })
})
