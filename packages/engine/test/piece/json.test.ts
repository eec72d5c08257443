import { describe, expect, it } from 'vitest'
import { JsonProblem, MOST_CHARACTERS, MOST_DEPTH, readJson } from '../../src/piece/json.ts'
import { chance } from '../stack/random.ts'
import { PIECES, SHOP } from './rich.ts'

/** Texts that are no JSON (RFC 8259) or go past the bounds: line, column, and words of the message. */
const refused: readonly (readonly [
  name: string,
  text: string,
  line: number,
  column: number,
  words: string
])[] = [
  ['an empty file', '', 1, 1, 'found an empty file; allowed: a JSON object'],
  ['a file of blanks', ' \n\t\n ', 3, 2, 'found an empty file'],
  ['a text cut off in a key', '{\n  "na', 2, 3, 'found text that never ends'],
  ['a text cut off after a key', '{"a"', 1, 5, 'found the end of the file; allowed: a colon after the key'],
  ['a text cut off after a colon', '{"a":', 1, 6, 'found the end of the file'],
  ['a text cut off in a list', '[1,\n2', 2, 2, 'found the end of the file; allowed: a comma or ]'],
  [
    'a text cut off after a comma',
    '{"a": 1,',
    1,
    9,
    'found the end of the file; allowed: a key in double quotes'
  ],
  [
    'a key twice',
    '{"a": 1,\n "b": 2, "a": 3}',
    2,
    10,
    'found the key "a" a second time; allowed: each key once'
  ],
  ['a key twice, once escaped', '{"a": 1, "\\u0061": 2}', 1, 10, 'the key "\\u0061" a second time'],
  ['a key of a prototype twice', '{"__proto__": 1, "__proto__": 2}', 1, 18, 'a second time'],
  ['NaN', '{"a": NaN}', 1, 7, 'found "NaN"'],
  ['Infinity', '[Infinity]', 1, 2, 'found "Infinity"'],
  ['-Infinity', '[-Infinity]', 1, 2, 'found "-"'],
  ['undefined', '[undefined]', 1, 2, 'found "undefined"'],
  ['True', '[True]', 1, 2, 'found "True"'],
  [
    'a number beyond doubles',
    '[1, 1e999]',
    1,
    5,
    'found the number 1e999; allowed: numbers up to about 1.8e308'
  ],
  ['a number beyond doubles below', '[-1e999]', 1, 2, 'found the number -1e999'],
  ['a leading zero', '[01]', 1, 3, 'found "1"; allowed: a comma or ]'],
  ['a leading point', '[.5]', 1, 2, 'found "."'],
  ['a leading plus', '[+5]', 1, 2, 'found "+"'],
  ['a trailing point', '[5.]', 1, 3, 'found "."'],
  ['a hexadecimal number', '[0x10]', 1, 3, 'a comma or ]'],
  ['single quotes', "{'a': 1}", 1, 2, 'found "\'"; allowed: a key in double quotes'],
  ['a bare key', '{a: 1}', 1, 2, 'allowed: a key in double quotes'],
  [
    'a comma before a brace',
    '{"a": 1,}',
    1,
    9,
    'found a comma before }; allowed: no comma after the last entry'
  ],
  ['a comma before a bracket', '[1, ]', 1, 5, 'found a comma before ]'],
  ['two commas', '[1,,2]', 1, 4, 'found ","'],
  ['a missing comma', '[1 2]', 1, 4, 'allowed: a comma or ]'],
  ['a bracket closed by a brace', '[1}', 1, 3, 'allowed: a comma or ]'],
  ['a comment', '{ /* size */ }', 1, 3, 'found "/"'],
  ['more after the end', '{}\n{}', 2, 1, 'allowed: nothing after the end of the document'],
  ['a line break in a text', '{"a": "b\nc"}', 1, 9, 'found the character U+000A'],
  ['a tab in a text', '["\t"]', 1, 3, 'found the character U+0009'],
  ['a backslash before a letter', '["\\q"]', 1, 3, 'found a backslash; allowed: one of'],
  ['a short escape', '["\\u00"]', 1, 3, 'found a backslash'],
  ['a NUL', '\u0000', 1, 1, 'found the character U+0000'],
  ['lists in lists', '['.repeat(MOST_DEPTH + 1), 1, MOST_DEPTH + 1, `nesting deeper than ${MOST_DEPTH}`],
  [
    'objects in objects',
    '{"a":'.repeat(MOST_DEPTH + 1),
    1,
    5 * MOST_DEPTH + 1,
    `nesting deeper than ${MOST_DEPTH}`
  ],
  ['a hundred thousand brackets', '['.repeat(100_000), 1, MOST_DEPTH + 1, 'nesting deeper']
]

describe('the JSON of a document', () => {
  it.each(refused)('refuses %s with one message and its place', (_, text, line, column, words) => {
    let problem: unknown
    try {
      readJson(text)
    } catch (e) {
      problem = e
    }
    expect(problem).toBeInstanceOf(JsonProblem)
    const { message, ...at } = problem as JsonProblem
    expect({ line: at.line, column: at.column }).toEqual({ line, column })
    expect(message).toContain(words)
    expect(message.length).toBeLessThan(200)
  })

  it('refuses a text over the bound without reading it', () => {
    const begun = performance.now()
    expect(() => readJson(' '.repeat(MOST_CHARACTERS + 1))).toThrow(
      `found ${MOST_CHARACTERS + 1} characters; allowed: at most ${MOST_CHARACTERS}`
    )
    expect(performance.now() - begun).toBeLessThan(500)
  })

  it.each([
    ['a byte order mark before it', '\ufeff{"a": 1}', { a: 1 }],
    ['blanks and line ends of every kind', ' \r\n\t{ "a" :\r1 }\n', { a: 1 }],
    ['nesting up to the bound', '['.repeat(MOST_DEPTH) + ']'.repeat(MOST_DEPTH), null],
    ['an empty object and an empty list', '{"a": {}, "b": []}', { a: {}, b: [] }],
    [
      'escapes',
      '["\\" \\\\ \\/ \\b \\f \\n \\r \\t \\u00e9 \\ud83d\\ude00"]',
      ['" \\ / \b \f \n \r \t é 😀']
    ],
    ['the same key in two objects', '[{"a": 1}, {"a": 2}]', [{ a: 1 }, { a: 2 }]],
    [
      'the ends of the doubles',
      '[1.7976931348623157e308, 5e-324, -0]',
      [Number.MAX_VALUE, Number.MIN_VALUE, -0]
    ],
    ['a number too small for a double, as nothing', '[1e-999]', [0]]
  ])('takes %s', (_, text, value) => {
    if (value === null) expect(readJson(text)).toBeInstanceOf(Array)
    else expect(readJson(text)).toEqual(value)
  })

  it('keeps a key of a prototype a plain key, and the prototype as it is', () => {
    const got = readJson('{"__proto__": {"a": 1}, "constructor": 2}') as object
    expect(Object.keys(got)).toEqual(['__proto__', 'constructor'])
    expect(Object.getPrototypeOf(got)).toBe(Object.prototype)
    expect(({} as Record<string, unknown>)['a']).toBeUndefined()
  })

  it('refuses what JSON.parse refuses, and takes what it takes but for keys twice, of 4000 spoiled texts', () => {
    const bases = [...PIECES, SHOP].map(d => JSON.stringify(d, null, 1))
    const characters = [
      '"',
      '\\',
      '{',
      '}',
      '[',
      ']',
      ',',
      ':',
      '-',
      '.',
      'e',
      '9',
      '0',
      '\u0000',
      '\n',
      'é',
      'n',
      't'
    ]
    let taken = 0
    for (let seed = 1; seed <= 4000; seed++) {
      const c = chance(seed)
      let text = c.pick(bases).slice(0, c.whole(1, 400))
      for (let k = c.whole(0, 2); k >= 0; k--) {
        const at = c.whole(0, text.length)
        text = text.slice(0, at) + (c.is(0.7) ? c.pick(characters) : '') + text.slice(at + c.whole(0, 3))
      }
      // Half are closed again, so that not all fail for being cut.
      const closed = c.is(0.5)
        ? text
        : `[${JSON.stringify(text)}, ${c.pick(['1', '"a"', '{}', '01', '{"a":1,"a":2}'])}]`
      let other: unknown
      try {
        other = { value: JSON.parse(closed) as unknown }
      } catch {
        other = null
      }
      let ours: unknown
      try {
        ours = { value: readJson(closed) }
        taken++
      } catch (e) {
        if (!(e instanceof JsonProblem)) throw new Error(`seed ${seed}: ${String(e)}`)
        ours = e.found.includes('a second time') ? other : null
      }
      expect(ours, `seed ${seed}: ${closed}`).toEqual(other)
    }
    expect(taken).toBeGreaterThan(500)
  })
})
