import type { QuantityField } from '../../src/piece/field.ts'
import type { Chance } from '../stack/random.ts'

/** A JSON value. */
export type Json = null | boolean | number | string | Json[] | { [key: string]: Json }

/** A node of the published JSON Schema, as the generator reads it: nothing is taken from the zod source. */
export interface Node {
  $ref?: string
  $defs?: Record<string, Node>
  type?: string
  const?: Json
  enum?: Json[]
  minimum?: number
  maximum?: number
  minItems?: number
  maxItems?: number
  minLength?: number
  maxLength?: number
  pattern?: string
  properties?: Record<string, Node>
  required?: string[]
  prefixItems?: Node[]
  items?: Node | false
  anyOf?: Node[]
  oneOf?: Node[]
  not?: Node
  allOf?: Node[]
  'x-quantity'?: QuantityField
}

/** How much of what may be left out is put in, and how deep shapes go in each other. */
export interface Taste {
  readonly optional: number
  readonly depth: number
}

/** The node a reference points at. */
export function resolved(page: Node, node: Node): Node {
  let at = node
  while (at.$ref !== undefined) {
    const target: Node = at.$ref === '#' ? page : page.$defs![at.$ref.replace('#/$defs/', '')]!
    const { $ref: _, ...own } = at
    at = { ...target, ...own }
  }
  return at
}

/** A value drawn by lot that the schema allows at `node`. */
export function valid(page: Node, node: Node, c: Chance, taste: Taste): Json {
  const at = resolved(page, node)
  if (at.const !== undefined) return at.const
  if (at.enum) return c.pick(at.enum)
  const quantity = at['x-quantity']
  if (quantity) return quantityOf(quantity, c)
  const branches = at.anyOf ?? (at.type === undefined ? at.oneOf : undefined)
  if (branches) return valid(page, c.pick(branches), c, taste)
  switch (at.type) {
    case 'number':
      return numberOf(at.minimum!, at.maximum!, c)
    case 'integer':
      return Math.round(numberOf(at.minimum!, at.maximum!, c))
    case 'boolean':
      return c.is(0.5)
    case 'string':
      return textOf(at, c)
    case 'array':
      return listOf(page, at, c, taste)
    default:
      return objectOf(page, at, c, taste)
  }
}

function listOf(page: Node, at: Node, c: Chance, taste: Taste): Json[] {
  if (at.prefixItems) return at.prefixItems.map(n => valid(page, n, c, taste))
  const least = at.minItems ?? 0
  const most = Math.min(at.maxItems ?? 3, least + (taste.depth > 0 ? c.whole(0, 2) : 0))
  return Array.from({ length: most }, () =>
    valid(page, at.items as Node, c, { ...taste, depth: taste.depth - 1 })
  )
}

// "Exactly one of" and "at most one of" are written as `allOf: [{ oneOf: [{ required: [key] }, ...] }]`.
function objectOf(page: Node, at: Node, c: Chance, taste: Taste): Json {
  const out: { [key: string]: Json } = {}
  const inner = { ...taste, depth: taste.depth - 1 }
  const groups = (at.allOf ?? []).map(rule => {
    const keys = rule.oneOf!.flatMap(o => o.required ?? [])
    return { keys, none: rule.oneOf!.some(o => o.not !== undefined) }
  })
  const chosen = new Set<string>()
  for (const g of groups) {
    // Deep down only leaves: a union of unions of unions would not end.
    const leaves = g.keys.filter(k => taste.depth > 0 || !['union', 'difference', 'common'].includes(k))
    if (!(g.none && c.is(0.5))) chosen.add(c.pick(leaves))
  }
  const grouped = new Set(groups.flatMap(g => g.keys))
  for (const [key, node] of Object.entries(at.properties ?? {})) {
    const wanted = grouped.has(key)
      ? chosen.has(key)
      : (at.required ?? []).includes(key) || c.is(taste.depth > -3 ? taste.optional : 0)
    if (wanted) out[key] = valid(page, node, c, inner)
  }
  return out
}

function numberOf(min: number, max: number, c: Chance): number {
  const ends = c.next()
  if (ends < 0.1) return min
  if (ends < 0.2) return max
  // Most ranges span several powers of ten; makers live at the low end.
  const low = Math.max(min, 0)
  return c.is(0.5)
    ? Math.min(max, Math.max(min, round(low + (max - low) * c.next() ** 4)))
    : Math.min(max, Math.max(min, round(c.span(min, max))))
}

const round = (x: number) => Number(x.toPrecision(4))

/** Fixed units in one of each word a length, mass ... may be typed in; written here apart from the source. */
const WORDS: Record<
  QuantityField['dimension'],
  readonly (readonly [word: string, toTyped: (x: number) => number])[]
> = {
  length: [
    ['mm', x => x],
    ['cm', x => x / 10],
    ['in', x => x / 25.4],
    ['"', x => x / 25.4],
    ['ft', x => x / 304.8]
  ],
  mass: [
    ['g', x => x],
    ['kg', x => x / 1000],
    ['lb', x => x / 453.59237],
    ['oz', x => x / 28.349523125]
  ],
  volume: [
    ['ml', x => x],
    ['l', x => x / 1000],
    ['gal', x => x / 3785.411784],
    ['fl oz', x => x / 29.5735295625]
  ],
  temperature: [
    ['°C', x => x],
    ['°F', x => (x * 9) / 5 + 32],
    ['K', x => x + 273.15]
  ],
  time: [
    ['min', x => x],
    ['h', x => x / 60],
    ['d', x => x / 1440],
    ['s', x => x * 60]
  ],
  percent: [['%', x => x]]
}

function quantityOf(q: QuantityField, c: Chance): Json {
  const x = numberOf(q.min, q.max, c)
  if (c.is(0.6)) return x
  // Inside by a little, so that rounding to nine digits stays in.
  const inside = q.min + (q.max - q.min) * (0.001 + 0.998 * ((x - q.min) / (q.max - q.min)))
  const [word, toTyped] = c.pick(WORDS[q.dimension])
  const typed = toTyped(inside)
  const text = Math.abs(typed).toFixed(6)
  if (/[1-9]/.test(text) === false || (typed < 0 && q.min >= 0)) return x
  return `${typed < 0 ? '-' : ''}${text}${c.is(0.5) ? ' ' : ''}${word}`
}

function textOf(at: Node, c: Chance): string {
  if (at.pattern === undefined) {
    const length = c.whole(at.minLength ?? 0, Math.min(at.maxLength ?? 12, 12))
    const letters = ['a', 'B', ' ', 'é', '漢', '😀', '"', '\\', '\n', '0', '/', '~']
    return Array.from({ length: Math.max(length, at.minLength ?? 0) }, () => c.pick(letters)).join('')
  }
  const two = (n: number) => String(n).padStart(2, '0')
  const day = `20${two(c.whole(20, 39))}-${two(c.whole(1, 12))}-${two(c.whole(1, 28))}`
  const samples = [
    day,
    `${day}T${two(c.whole(0, 23))}:${two(c.whole(0, 59))}${c.pick(['Z', '+01:00', '-09:30', ':30Z'])}`,
    `${two(c.whole(0, 11))}:00-${two(c.whole(12, 23))}:30`,
    `r-${c.whole(100_000, 999_999)}`,
    `#${c.whole(0, 0xffffff).toString(16).padStart(6, '0')}`,
    'nc',
    c.pick(['green', 'A', 'dark 2', 'é-1', 'pour 1', 'x_y.z'])
  ]
  const fits = samples.filter(s => new RegExp(at.pattern!, 'u').test(s))
  if (fits.length === 0) throw new Error(`no sample for the pattern ${at.pattern}`)
  return c.pick(fits)
}

/** Every place of a document with the schema node that stands there, the document itself first. */
export function places(page: Node, document: Json): { path: (string | number)[]; node: Node; value: Json }[] {
  const out: { path: (string | number)[]; node: Node; value: Json }[] = []
  const walk = (value: Json, node: Node | undefined, path: (string | number)[]) => {
    if (node === undefined) return
    let at = resolved(page, node)
    out.push({ path, node: at, value })
    if (value === null || typeof value !== 'object') return
    const kind = Array.isArray(value) ? 'array' : 'object'
    const branches = (at.anyOf ?? (at.type === undefined ? at.oneOf : undefined))?.map(b => resolved(page, b))
    if (branches) {
      const of = branches.filter(b => b.type === kind)
      at =
        of.find(b =>
          Object.entries(b.properties ?? {}).every(
            ([k, n]) => n.const === undefined || (value as Record<string, Json>)[k] === n.const
          )
        ) ?? at
    }
    if (Array.isArray(value)) {
      value.forEach((v, i) => {
        walk(v, at.prefixItems?.[i] ?? (at.items || undefined), [...path, i])
      })
    } else {
      for (const [k, v] of Object.entries(value)) walk(v, at.properties?.[k], [...path, k])
    }
  }
  walk(document, page, [])
  return out
}

/** The keys an object at a place does not have and could, with what may stand there. */
export function open(page: Node, { node, value }: { node: Node; value: Json }): [string, Node][] {
  if (value === null || typeof value !== 'object' || Array.isArray(value)) return []
  const branches = node.anyOf ?? (node.type === undefined ? node.oneOf : undefined) ?? [node]
  const own = value
  const fit = branches
    .map(b => resolved(page, b))
    .find(
      b =>
        b.properties !== undefined &&
        Object.entries(b.properties ?? {}).every(([k, n]) => n.const === undefined || own[k] === n.const)
    )
  return Object.entries(fit?.properties ?? {}).filter(([k]) => !Object.hasOwn(own, k))
}
