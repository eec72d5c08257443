import { describe, expect, it } from 'vitest'
import type { Problem } from '../../src/piece/problem.ts'
import { InputProblem, readable } from '../../src/piece/problem.ts'
import { readPiece, readShop, usualShop } from '../../src/piece/read.ts'
import { plan } from '../../src/plan.ts'

/** A sound piece; each row below changes what it is about. */
const SOUND = {
  castwright: 1,
  name: 'x',
  outline: { rectangle: [300, 200] },
  pours: [{ resin: 'medium', depth: 8 }]
}
const piece = (change: object) => JSON.stringify({ ...SOUND, ...change })
const without = (key: keyof typeof SOUND) => JSON.stringify({ ...SOUND, [key]: undefined })
const ash = { species: 'ash-white', outline: { rectangle: [50, 50] }, thickness: 20 }
const LENGTH = 'a number in mm, or text with a unit such as "38 mm" or "1 1/2 in", from 0.01 to 10000 mm'

// biome-ignore format: one case a line
/** Bad input of each kind, and the problem said of it: some words of what is found and allowed, the example. */
const table: readonly (readonly [name: string, text: string, problem: Problem])[] = [
  ['a wrong type', piece({ name: 5 }), p('/name', '5', 'text of 1 to 120 characters (name of the piece)', '"a few words"')],
  ['a text for a list', piece({ timbers: 'oak' }), p('/timbers', '"oak"', 'a list of at most 200', '[]')],
  ['a number for an object', piece({ pours: [5] }), p('/pours/0', '5', 'an object (resin cast at one time', '{"resin":"medium","depth":8}')],
  ['yes for a length', piece({ flatten: { back: true } }), p('/flatten/back', 'true', 'a number in mm, or text with a unit', '18')],
  ['a missing part', without('outline'), p('/outline', 'nothing', 'an object (outline of the finished piece)', '{"rectangle":[300,200],"corner":12}')],
  ['missing pours', without('pours'), p('/pours', 'nothing', 'a list of 1 to 100 (pours in order)', '[{"resin":"medium","depth":8}]')],
  ['no pour at all', piece({ pours: [] }), p('/pours', '[]', 'a list of 1 to 100', '[{"resin":"medium","depth":8}]')],
  ['a missing version', without('castwright'), p('/castwright', 'nothing', 'the version of the document, 1 to 1', '"castwright": 1')],
  ['no amount of a pour', piece({ pours: [{ resin: 'medium' }] }), p('/pours/0', 'none of depth, height, mass, fill', 'exactly one of depth, height, mass, fill', '{"resin":"medium","depth":8}')],
  ['two amounts of a pour', piece({ pours: [{ resin: 'medium', depth: 8, mass: 9 }] }), p('/pours/0', 'depth and mass together', 'exactly one of', '{"resin":"medium","depth":8}')],
  ['a shape of nothing', piece({ outline: {} }), p('/outline', 'none of circle, rectangle', 'exactly one of circle, rectangle', '{"rectangle":[300,200],"corner":12}')],
  ['a negative size', piece({ outline: { circle: -5 } }), p('/outline/circle', '-5', LENGTH, '18')],
  ['no size', piece({ outline: { circle: 0 } }), p('/outline/circle', '0', LENGTH, '18')],
  ['an absurd size', piece({ outline: { circle: 1e7 } }), p('/outline/circle', '10000000', LENGTH, '18')],
  ['an absurd size with a unit', piece({ outline: { circle: '40 ft' } }), p('/outline/circle', '"40 ft"', LENGTH, '18')],
  ['a mass for a length', piece({ outline: { circle: '5 kg' } }), p('/outline/circle', '"5 kg"', LENGTH, '18')],
  ['a unit nobody knows', piece({ outline: { circle: '5 furlongs' } }), p('/outline/circle', '"5 furlongs"', LENGTH, '18')],
  ['a text without a unit', piece({ outline: { circle: '5' } }), p('/outline/circle', '"5"', LENGTH, '18')],
  ['a text NaN', piece({ outline: { circle: 'NaN' } }), p('/outline/circle', '"NaN"', LENGTH, '18')],
  ['NaN', piece({}).replace('300', 'NaN'), p('', '"NaN"', 'a number, text in double quotes', '')],
  ['null', piece({ outline: { circle: null } }), p('/outline/circle', 'null', LENGTH, '18')],
  ['an outline that crosses itself', piece({ outline: { polygon: [[0, 0], [90, 90], [90, 0], [0, 90]] } }), p('/outline/polygon', 'an outline that crosses itself near (45, 45)', 'an outline that does not cross itself', '')],
  ['a path that crosses itself', piece({ outline: { path: 'M0 0L90 90L90 0L0 90Z' } }), p('/outline/path', 'an outline that crosses itself near (45, 45)', 'does not cross itself', '')],
  ['a path that is not closed', piece({ outline: { path: 'M 0 0 L 90 90' } }), p('/outline/path', 'a path that is not closed', 'a closed path: end it with Z', '"M 0 0 H 80 V 40 H 0 Z"')],
  ['two corners', piece({ outline: { polygon: [[0, 0], [90, 0]] } }), p('/outline/polygon', '[[0,0],[90,0]]', 'a list of 3 to 30000', '[[0,0],[300,0],[300,200]]')],
  ['a hole outside its outline', piece({ outline: { polygon: [[0, 0], [90, 0], [90, 90], [0, 90]], holes: [[[200, 0], [210, 0], [210, 10]]] } }), p('/outline/holes/0', 'a hole that leaves its outline', 'holes inside the outline', '')],
  ['a difference that leaves nothing', piece({ outline: { difference: [{ circle: 40 }, { circle: 60 }] } }), p('/outline', 'a shape with no area', 'encloses something', '')],
  ['a shape scaled off the bench', piece({ outline: { path: 'M0 0H90V90Z', scale: 900, grow: 5 } }), p('/outline', 'a shape that reaches 81000 mm', 'at most 30000 mm', '')],
  ['a corner too round', piece({ outline: { rectangle: [10, 10], corner: 9 } }), p('/outline/corner', '9', 'at most half the shorter side, 5 mm', '2.5')],
  ['a file that is not there', piece({ outline: { file: 'a.svg' } }), p('/outline/file', '"a.svg"', 'an SVG file beside the piece file', '')],
  ['timber outside the mould', piece({ timbers: [{ ...ash, outline: { rectangle: [50, 50], at: [500, 0] } }] }), p('/timbers/0/outline', 'outside the mould by 25 cm²', 'inside the mould, x -156 to 156', '')],
  ['timbers in the same place', piece({ timbers: [ash, { ...ash, outline: { circle: 40 } }] }), p('/timbers/1/outline', 'timber 2 and timber 1 in the same place', 'timbers beside each other, or one above the other', '')],
  ['a mould smaller than the piece', piece({ mould: { shape: { circle: 50 } } }), p('/mould/shape', 'a mould smaller than the outline', 'a mould round the outline', '')],
  ['a pour below the one before', piece({ pours: [{ resin: 'medium', height: 20 }, { resin: 'medium', height: 10 }] }), p('/pours/1/height', '10 mm as cast, below the one before, which stands at 20', 'a height above what stands already', '"depth": 10')],
  ['an unknown timber', piece({ timbers: [{ ...ash, species: 'walnutt-black' }] }), p('/timbers/0/species', 'a timber "walnutt-black"', 'nearest: walnut-black', '"walnut-black"')],
  ['an unknown resin', piece({ pours: [{ resin: 'meduim', depth: 8 }] }), p('/pours/0/resin', 'the resin "meduim"', 'one of deep, medium, thin', '"medium"')],
  ['an unknown pigment', piece({ pours: [{ resin: 'medium', depth: 8, tint: [{ pigment: 'white-past', percent: 2 }] }] }), p('/pours/0/tint/0/pigment', 'a pigment "white-past"', 'nearest: white-paste', '"white-paste"')],
  ['an unknown coat of both faces, said once', piece({ finish: { both: { coat: 'hardwax-oyl' } } }), p('/finish/both/coat', 'a coat "hardwax-oyl"', 'nearest: hardwax-oil', '"hardwax-oil"')],
  ['an unknown board', piece({ mould: { base: 'melamin' } }), p('/mould/base', 'a board "melamin"', 'nearest: melamine', '"melamine')],
  ['an unknown room', piece({ climate: 'heated rom' }), p('/climate', 'a room "heated rom"', 'nearest: heated-room', '"heated-room"')],
  ['an unknown key', piece({ outlines: 5 }), p('/outlines', 'the unknown key "outlines"', 'the nearest known key is "outline"', '"outline": {"rectangle":[300,200],"corner":12}')],
  ['a key near none', piece({ qqqqqqqqqq: 5 }), p('/qqqqqqqqqq', 'the unknown key "qqqqqqqqqq"', 'one of castwright, $schema, name', '')],
  ['a key of a prototype', piece({}).replace('{', '{"__proto__":{"name":"y"},'), p('/__proto__', 'the unknown key "__proto__"', 'one of castwright', '')],
  ['a key with a slash and a tilde', piece({ 'a/b~c': 5 }), p('/a~1b~0c', 'the unknown key "a/b~c"', 'one of castwright', '')],
  ['a word of no choice', piece({ cuts: [{ face: 'front', shape: { circle: 5 }, depth: 3, way: 'routr' }] }), p('/cuts/0/way', '"routr"', '"machine", "router", "drill"', '"router"')],
  ['a step nobody does', piece({ steps: [{ do: 'poor', what: 'a' }] }), p('/steps/0/do', '"poor"', '"prepare timber", "make mould"', '"pour"')],
  ['a name that is not there', piece({ hardware: [{ kind: 'quartz-movement', in: 'pockit' }], cuts: [{ id: 'pocket', face: 'back', shape: { circle: 60 }, depth: 3 }] }), p('/hardware/0/in', '"pockit", which no cut or former is called', 'one of pocket', '"pocket"')],
  ['a name twice', piece({ timbers: [{ ...ash, id: 'a' }, { ...ash, id: 'a' }] }), p('/timbers/1/id', 'the name "a", which timbers[0] has too', 'each name once', '"a 2"')],
  ['an impossible day', piece({ wanted: '2026-02-31' }), p('/wanted', '"2026-02-31"', 'a day of the calendar: February 2026 has 28 days', '"2026-02-28"')],
  ['a leap day of no leap year', piece({ wanted: '2100-02-29' }), p('/wanted', '"2100-02-29"', 'February 2100 has 28 days', '"2100-02-28"')],
  ['an impossible moment', piece({ start: '2026-04-31T09:00+02:00' }), p('/start', '"2026-04-31T09:00+02:00"', 'April 2026 has 30 days', '"2026-04-30T09:00+02:00"')],
  ['a day in another form', piece({ wanted: '19.12.2026' }), p('/wanted', '"19.12.2026"', 'YYYY-MM-DD', '"2026-12-19"')],
  ['a moment without offset', piece({ start: '2026-12-05T09:00' }), p('/start', '"2026-12-05T09:00"', 'YYYY-MM-DDThh:mm and offset', '"2026-12-05T09:00+01:00"')],
  ['hour 25', piece({ start: '2026-12-05T25:00Z' }), p('/start', '"2026-12-05T25:00Z"', 'YYYY-MM-DDThh:mm and offset', '"2026-12-05T09:00+01:00"')],
  ['too many pours', piece({ pours: Array(101).fill(SOUND.pours[0]) }), p('/pours', 'a list of 101', 'a list of 1 to 100', '[{"resin":"medium","depth":8}]')],
  ['a name too long', piece({ name: 'x'.repeat(500) }), p('/name', '..." (500 characters)', 'text of 1 to 120 characters', '"a few words"')],
  ['more pigment than mix', piece({ pours: [{ resin: 'medium', depth: 8, tint: [{ pigment: 'white-paste', percent: 20 }, { pigment: 'black-paste', percent: 20 }] }] }), p('/pours/0/tint', '40 % of pigments together', 'at most 30 %', '[{ "pigment": "white-paste", "percent": 3 }]')],
  ['an empty file', '', p('', 'an empty file', 'a JSON object', '{ "castwright": 1, ... }')],
  ['a binary file', '\ufffdPNG\r\n\u001a\n\u0000\u0000', p('', 'a binary file', 'a text file in UTF-8 with a JSON object', '{ "castwright": 1, ... }')],
  ['a packed file', 'PK\u0003\u0004\ufffd', p('', 'a binary file', 'a text file in UTF-8', '{ "castwright": 1, ... }')],
  ['a list', '[]', p('', '[]', 'a JSON object', '{ "castwright": 1, ... }')],
  ['a text cut off', piece({}).slice(0, 26), p('', 'the end of the file', '', '')],
  ['deep nesting', '{"a":'.repeat(99), p('', 'nesting deeper than 64', 'at most 64 objects and lists in each other', '')],
  ['a key twice', '{"name": "a", "name": "b"}', p('', 'the key "name" a second time', 'each key once', '')],
  ['a newer version', piece({ castwright: 9 }), p('/castwright', '9', 'versions 1 to 1: this file was written by a newer Castwright', '"castwright": 1')]
]

function p(path: string, found: string, allowed: string, example: string): Problem {
  return { path, found, allowed, example }
}

function refused(run: () => unknown): InputProblem {
  try {
    run()
  } catch (e) {
    if (e instanceof InputProblem) return e
    throw e
  }
  throw new Error('nothing was refused')
}

const planned = (text: string) =>
  plan(
    { piece: readPiece(text, 'x.piece.json'), shop: usualShop(), source: 'x.piece.json' },
    { asOf: '2026-11-01T08:00Z', effort: 'preview' }
  )

describe('what a piece that cannot be used is told', () => {
  it('is nothing for a sound one', () => {
    expect(planned(piece({})).plan.name).toBe('x')
  })

  it.each(table)('names place, found, allowed and an example of %s', (_, text, wanted) => {
    const problem = refused(() => planned(text))
    expect(problem.problems).toHaveLength(1)
    const got = problem.problems[0]!
    expect(got.path).toBe(wanted.path)
    expect(got.found).toContain(wanted.found)
    expect(got.allowed).toContain(wanted.allowed)
    if (wanted.example === '') expect(got.example).toBe('')
    else expect(got.example).toContain(wanted.example)
    expect(problem.message).toContain('x.piece.json')
    expect(problem.message).toContain(readable(wanted.path))
    expect(problem.message).not.toMatch(/undefined|\[object|NaN mm/)
    expect(problem.message.length, problem.message).toBeLessThanOrEqual(300)
  })

  it('is all that is wrong at once, each once', () => {
    const { problems } = refused(() =>
      planned(piece({ name: '', down: 'left', wanted: '2026-02-30', pours: [{ resin: 5, depht: 8 }] }))
    )
    expect(problems.map(x => x.path)).toEqual([
      '/name',
      '/down',
      '/pours/0/resin',
      '/pours/0/depht',
      '/wanted'
    ])
  })

  it.each([
    [
      'no vessel',
      { vessels: [] },
      p('/vessels', '[]', 'a list of 1 to 40', '[{"capacity":1000,"diameter":110}]')
    ],
    [
      'a resin twice',
      { resins: [{ id: 'a' }, { id: 'a' }] },
      p('/resins/1/id', '"a"', 'each name once', '"a 2"')
    ],
    [
      'hours that end before they begin',
      { hours: { sat: ['17:00-09:00'] } },
      p('/hours/sat/0', '"17:00-09:00"', 'hours that end after they begin', '"08:00-12:00"')
    ],
    [
      'a time zone that nobody has',
      { timeZone: 'Europe/Berln' },
      p('/timeZone', '"Europe/Berln"', 'the IANA name of a time zone', '"Europe/Berlin"')
    ],
    [
      'hours past midnight',
      { hours: { sat: ['17:00-24:30'] } },
      p('/hours/sat/0', '"17:00-24:30"', 'from-to, local time', '"08:00-12:00"')
    ],
    [
      'a cup as narrow as a straw',
      { vessels: [{ capacity: 100, diameter: 3 }] },
      p('/vessels/0/diameter', '3', 'from 20 to 1000 mm', '20')
    ],
    ['a warm word', { climate: { night: 'hot' } }, p('/climate/night', '"hot"', 'a number in °C', '21')]
  ] as const)('says of a shop with %s what is wrong', (_, change, wanted) => {
    const problem = refused(() => readShop(JSON.stringify({ castwright: 1, ...change }), 'shop.json'))
    expect(problem.problems).toHaveLength(1)
    const got = problem.problems[0]!
    expect(got).toMatchObject({ path: wanted.path, found: wanted.found, example: wanted.example })
    expect(got.allowed).toContain(wanted.allowed)
  })
})
