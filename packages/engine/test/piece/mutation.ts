import type { Chance } from '../stack/random.ts'
import type { Json, Node } from './generate.ts'
import { open, places, valid } from './generate.ts'

/** Values that break careless readers. `raw` ones are text that JSON itself may not allow. */
const VALUES: readonly Json[] = [
  null,
  true,
  false,
  0,
  -0,
  -1,
  0.01,
  1e-300,
  1e9,
  -1e9,
  1e308,
  '',
  ' ',
  'NaN',
  'Infinity',
  '-5 mm',
  '1e400 mm',
  '999999999 ft',
  '1/9999 in',
  '0 mm',
  '\u0000',
  '\ud800',
  '😀',
  'é́',
  'x'.repeat(5000),
  '__proto__',
  'constructor',
  [],
  {},
  [[[[[[[[1]]]]]]]],
  [null],
  { length: 3 },
  JSON.parse('{"__proto__": 1}') as Json
]
const RAW: readonly string[] = [
  'NaN',
  'Infinity',
  '-Infinity',
  'undefined',
  '1e999',
  '01',
  '.5',
  '0x10',
  "'a'",
  '\u0000',
  '"\\u00"',
  '/* */',
  '1e308',
  '-0',
  '"\ufeff"',
  '['.repeat(100),
  '{"a":1,"a":2}'
]
const CHARACTERS = [
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
  '\ufeff',
  '\n',
  'é',
  '\ud83d',
  ' '
]

/** A change of the text of a file: characters put in, left out, doubled, cut off. */
export function spoiledText(text: string, c: Chance): string {
  const at = c.whole(0, text.length - 1)
  const to = Math.min(text.length, at + c.whole(1, c.is(0.3) ? 200 : 6))
  switch (c.whole(0, 5)) {
    case 0:
      return text.slice(0, at) + c.pick(CHARACTERS) + text.slice(at)
    case 1:
      return text.slice(0, at) + c.pick(CHARACTERS) + text.slice(at + 1)
    case 2:
      return text.slice(0, at) + text.slice(to)
    case 3:
      return text.slice(0, to) + text.slice(at)
    case 4:
      return text.slice(0, at)
    default: {
      // A whole value exchanged for one that JSON may not allow.
      const values = [...text.matchAll(/-?[0-9][0-9.]*|"[^"]*"(?=[,\]}])/g)]
      const v = c.pick(values)
      return text.slice(0, v.index) + c.pick(RAW) + text.slice(v.index + v[0].length)
    }
  }
}

/** A change of a document: a value left out, doubled, exchanged, put out of its range or to an end of it. */
export function spoiledTree(page: Node, document: Json, c: Chance): Json {
  const copy = JSON.parse(JSON.stringify(document)) as Json
  const all = places(page, copy)
  const { path, node, value } = c.pick(all.slice(1))
  const key = path[path.length - 1]!
  let parent = copy as Record<string | number, Json>
  for (const k of path.slice(0, -1)) parent = parent[k] as Record<string | number, Json>
  const low = node['x-quantity']?.min ?? node.minimum
  const high = node['x-quantity']?.max ?? node.maximum
  const kind = c.next()
  if (kind < 0.12) {
    if (Array.isArray(parent)) parent.splice(key as number, 1)
    else delete parent[key]
  } else if (kind < 0.2 && Array.isArray(parent)) {
    parent.splice(key as number, 0, JSON.parse(JSON.stringify(value)) as Json)
  } else if (kind < 0.55 && low !== undefined && high !== undefined) {
    const ends = [low, high, low + 1e-6, high - 1e-6, (low + high) / 2, low - 1, high + 1]
    const near =
      typeof value === 'number'
        ? [value * 1.3, value * 0.7, value * 3, value / 3, value * 0.01, value * 20, -value]
        : []
    parent[key] = c.pick([...ends, ...near])
  } else if (kind < 0.68) {
    parent[key] = valid(page, node, c, { optional: 0.3, depth: 2 })
  } else if (kind < 0.84) {
    // Something that was left out put in.
    const object = c.pick(all.filter(p => open(page, p).length > 0))
    const [name, inner] = c.pick(open(page, object))
    ;(object.value as Record<string, Json>)[name] = valid(page, inner, c, { optional: 0.3, depth: 2 })
  } else if (kind < 0.88) {
    parent[key] = JSON.parse(JSON.stringify(c.pick(all).value)) as Json
  } else {
    parent[key] = c.pick(VALUES)
  }
  return copy
}

/** A key put in where an object stands. */
export function withKey(page: Node, document: Json, c: Chance): Json {
  const copy = JSON.parse(JSON.stringify(document)) as Json
  const objects = places(page, copy).filter(
    p => p.value !== null && typeof p.value === 'object' && !Array.isArray(p.value)
  )
  const object = c.pick(objects).value as Record<string, Json>
  const key = c.pick([
    'depht',
    'colour',
    '',
    'toString',
    'constructor',
    '__proto__',
    'id',
    'note',
    'turn',
    'grow',
    'a/b~c'
  ])
  Object.defineProperty(object, key, {
    value: c.pick(VALUES),
    enumerable: true,
    configurable: true,
    writable: true
  })
  return copy
}
