import { parseQuantity } from '../quantity/parse.ts'
import type { Dimension } from '../quantity/unit.ts'
import { nearest } from './nearest.ts'
import { InputProblem } from './problem.ts'
import { TROUBLES } from './reading-schema.ts'

/** Names that a reading may be of. */
export interface ReadingNames {
  readonly pours: readonly string[]
  readonly timbers: readonly string[]
  readonly cuts: readonly string[]
  readonly steps: readonly string[]
  /** Ids of the readings so far, oldest first. */
  readonly readings: readonly string[]
}

type Part =
  | { readonly key: string; readonly of: keyof ReadingNames; readonly may?: true }
  | { readonly key: string; readonly one: readonly string[]; readonly may?: true }
  | { readonly key: string; readonly is: Dimension | 'count'; readonly may?: true; readonly times?: number }
  | { readonly key: string; readonly text: true; readonly may?: true }

const FACE = { key: 'face', one: ['front', 'back'] } as const
const POUR = { key: 'pour', of: 'pours' } as const
const TIMBER = { key: 'timber', of: 'timbers' } as const
const STEP = { key: 'step', of: 'steps' } as const
const q = (key: string, is: Dimension | 'count', may?: true): Part =>
  may === undefined ? { key, is } : { key, is, may }

/** What is typed after each kind, in order. */
const FORMS: Readonly<Record<string, readonly Part[]>> = {
  mixed: [POUR, q('mass', 'mass', true)],
  poured: [POUR, q('mass', 'mass')],
  height: [POUR, q('height', 'length')],
  temperature: [{ ...POUR, may: true }, q('temperature', 'temperature')],
  humidity: [q('humidity', 'percent')],
  stage: [POUR, { key: 'stage', one: ['strings', 'tacky', 'gelled', 'hard'] }],
  demoulded: [],
  thickness: [q('thickness', 'length')],
  flatness: [FACE, q('out', 'length')],
  moisture: [
    TIMBER,
    q('moisture', 'percent'),
    { key: 'way', one: ['pins', 'pinless', 'oven-dry'], may: true }
  ],
  weight: [TIMBER, q('mass', 'mass')],
  sample: [TIMBER, q('wet', 'mass'), q('dry', 'mass')],
  corners: [{ key: 'corners', is: 'length', times: 4 }],
  'cup check': [q('volume', 'volume'), q('mass', 'mass')],
  'water test': [q('lost', 'mass'), q('over', 'time')],
  pin: [q('pin', 'count'), q('x', 'length'), q('y', 'length')],
  film: [FACE, q('film', 'length')],
  size: [{ key: 'cut', of: 'cuts' }, q('across', 'length')],
  began: [STEP],
  done: [STEP, q('minutes', 'time', true)],
  minutes: [STEP, q('minutes', 'time')],
  trouble: [
    { key: 'trouble', one: TROUBLES },
    { key: 'of', text: true, may: true }
  ],
  used: [q('amount', 'count'), { key: 'item', text: true }],
  photo: [{ key: 'photo', text: true }],
  note: [{ key: 'note', text: true }],
  withdrawn: [{ key: 'reading', of: 'readings' }]
}

/** What a maker says instead of a kind. */
const ALIASES: Readonly<Record<string, readonly string[]>> = {
  strings: ['stage', 'strings'],
  tacky: ['stage', 'tacky'],
  gelled: ['stage', 'gelled'],
  hard: ['stage', 'hard'],
  mix: ['mixed'],
  pour: ['poured'],
  begin: ['began'],
  undo: ['withdrawn'],
  demould: ['demoulded']
}

/** Kinds of readings with what is typed after each, for a list of them. */
export const READING_FORMS: readonly { readonly kind: string; readonly form: string }[] = Object.entries(
  FORMS
).map(([kind, parts]) => ({ kind, form: [kind, ...parts.map(formOf)].join(' ') }))

/**
 * A reading from words: "height green 11.2 mm", "gelled green", "done pour green 25 min". A bare number is in the
 * document's unit. Names are matched whatever their case; the longest that fits counts. `withdrawn last` takes back
 * the newest. The document lacks `id` and `at`: they are the caller's.
 * @throws InputProblem naming what was found and what is allowed
 */
export function readingFromWords(typed: readonly string[], names: ReadingNames): Record<string, unknown> {
  const tokens = typed.flatMap(t => t.split(/\s+/)).filter(t => t !== '')
  const { kind, rest } = kindOf(tokens)
  const parts = FORMS[kind]!
  const out: Record<string, unknown> = { kind }
  let left: readonly string[] = rest
  let bare: { readonly part: Part; readonly value: number } | null = null
  parts.forEach(part => {
    const times = 'times' in part ? (part.times ?? 1) : 1
    const values: unknown[] = []
    for (let k = 0; k < times; k++) {
      const taken = take(part, left, names)
      if (taken === null) {
        if (part.may) return
        throw wrong(kind, part, left, names)
      }
      values.push(taken.value)
      left = left.slice(taken.count)
      bare = typeof taken.value === 'number' && 'is' in part ? { part, value: taken.value } : null
    }
    out[part.key] = times > 1 ? values : values[0]
  })
  // A number and then words: they were meant as its unit.
  const counted = bare as { readonly part: Part; readonly value: number } | null
  if (left.length > 0 && counted !== null)
    throw wrong(kind, counted.part, [String(counted.value), ...left], names)
  if (left.length > 0) throw tooMuch(kind, left)
  return kind === 'trouble' ? troubleOf(out, names) : out
}

// What follows a trouble: of which entry, and by how much.
function troubleOf(out: Record<string, unknown>, names: ReadingNames): Record<string, unknown> {
  const { of, ...rest } = out
  if (typeof of !== 'string') return rest
  const words = of.split(' ')
  const all = [...names.pours, ...names.cuts, ...names.timbers]
  const name = longest(words, all)
  const after = words.slice(name?.count ?? 0)
  const by = after.length === 0 ? null : number(after, 'length')
  if ((name === null && by === null) || (after.length > 0 && by?.count !== after.length)) {
    const near = nearest(of, all)
    throw new InputProblem('log trouble', [
      {
        path: '',
        found: `"${of}"`,
        allowed: `the name of a pour, a cut or a timber, then by how much: ${all.join(', ')}`,
        example: near === null ? '' : `"${near} 2 mm"`
      }
    ])
  }
  return {
    ...rest,
    ...(name === null ? {} : { of: name.value }),
    ...(by === null ? {} : { by: by.value })
  }
}

interface Taken {
  readonly value: unknown
  readonly count: number
}

function take(part: Part, left: readonly string[], names: ReadingNames): Taken | null {
  if (left.length === 0) return null
  if ('of' in part) {
    if (part.of === 'readings' && left[0] === 'last') {
      const last = names.readings.at(-1)
      return last === undefined ? null : { value: last, count: 1 }
    }
    return longest(left, names[part.of])
  }
  if ('one' in part) return longest(left, part.one)
  if ('text' in part) return { value: left.join(' '), count: left.length }
  if (part.is === 'count') return /^[0-9]+$/.test(left[0]!) ? { value: Number(left[0]), count: 1 } : null
  return number(left, part.is)
}

// The longest run of words that is a quantity: "1 1/2 in", "11.2 mm", "11.2mm", "11.2".
function number(left: readonly string[], is: Dimension): Taken | null {
  for (let count = Math.min(4, left.length); count > 0; count--) {
    const text = left.slice(0, count).join(' ')
    if (parseQuantity(text, is) !== null) return { value: text, count }
    if (count === 1 && /^-?[0-9]+(\.[0-9]+)?$/.test(text)) return { value: Number(text), count }
  }
  return null
}

function longest(left: readonly string[], names: readonly string[]): Taken | null {
  const lower = left.map(w => w.toLowerCase())
  let best: Taken | null = null
  for (const name of names) {
    const words = name.toLowerCase().split(' ')
    if (words.length <= (best?.count ?? 0) || !words.every((w, i) => lower[i] === w)) continue
    best = { value: name, count: words.length }
  }
  return best
}

function kindOf(tokens: readonly string[]): { readonly kind: string; readonly rest: readonly string[] } {
  const kind = longest(tokens, Object.keys(FORMS))
  if (kind !== null) return { kind: kind.value as string, rest: tokens.slice(kind.count) }
  const alias = ALIASES[tokens[0]?.toLowerCase() ?? '']
  if (alias !== undefined) {
    const [word, ...fixed] = alias
    // "gelled green": the stage is typed before what it is of.
    return { kind: word!, rest: [...tokens.slice(1), ...fixed] }
  }
  const words = [...Object.keys(FORMS), ...Object.keys(ALIASES)]
  const near = nearest(tokens[0] ?? '', words)
  throw new InputProblem('log', [
    {
      path: '',
      found: tokens.length === 0 ? 'nothing' : `"${tokens[0]}"`,
      allowed: `a kind of reading: ${words.join(', ')}`,
      example: near === null ? '"height green 11.2 mm"' : `"${near}"`
    }
  ])
}

function formOf(part: Part): string {
  const word =
    'of' in part
      ? part.key.toUpperCase()
      : 'one' in part
        ? part.one.join('|')
        : 'text' in part
          ? part.key === 'of'
            ? '[ENTRY] [BY]'
            : part.key.toUpperCase()
          : part.times === undefined
            ? part.key.toUpperCase()
            : Array.from({ length: part.times }, () => 'MM').join(' ')
  return part.may && !word.startsWith('[') ? `[${word}]` : word
}

function wrong(kind: string, part: Part, left: readonly string[], names: ReadingNames): InputProblem {
  const found = left.length === 0 ? 'nothing more' : `"${left.join(' ')}"`
  const allowed =
    'of' in part
      ? names[part.of].length === 0
        ? `a ${part.key}; the piece has none`
        : `a ${part.key}: ${names[part.of].slice(0, 40).join(', ')}`
      : 'one' in part
        ? part.one.join(', ')
        : 'text' in part
          ? 'words'
          : part.is === 'count'
            ? 'a whole number'
            : `a ${part.is === 'percent' ? 'share' : part.is} for ${part.key}, such as ${SAMPLE[part.is]}`
  const near = 'of' in part && left.length > 0 ? nearest(left[0]!, names[part.of]) : null
  return new InputProblem(`log ${kind}`, [
    {
      path: '',
      found,
      allowed,
      example: near === null ? READING_FORMS.find(f => f.kind === kind)!.form : `"${near}"`
    }
  ])
}

const SAMPLE: Readonly<Record<Dimension, string>> = {
  length: '"11.2 mm"',
  mass: '"300 g"',
  volume: '"100 ml"',
  temperature: '"41 °C"',
  time: '"25 min"',
  percent: '"8.5 %"'
}

function tooMuch(kind: string, left: readonly string[]): InputProblem {
  return new InputProblem(`log ${kind}`, [
    {
      path: '',
      found: `"${left.join(' ')}" after it`,
      allowed: READING_FORMS.find(f => f.kind === kind)!.form,
      example: ''
    }
  ])
}
