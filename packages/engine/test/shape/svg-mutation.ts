import { randomFrom } from './random.ts'
import { SAMPLES } from './svg-samples.ts'

type Random = () => number
type Mutation = (text: string, random: Random) => string

const HUGE = [
  '1e308',
  '-1e308',
  '1e309',
  '1e-320',
  '9999999',
  '1e7',
  '-1e7',
  '10000001',
  '0',
  '-0',
  '.',
  '-',
  '1e',
  'NaN',
  'Infinity',
  '0x10',
  '1e-7',
  '007',
  '9'.repeat(400),
  `0.${'0'.repeat(400)}1`
]
const UNITS = [
  'em',
  'ex',
  'rem',
  'vw',
  'mm',
  'MM',
  'cm',
  'q',
  'Q',
  'in',
  'pt',
  'pc',
  'px',
  '%',
  '%%',
  'mm mm',
  'µm',
  'm'
]
const WORDS = [
  'transform="scale(0)"',
  'transform="scale(1e7)"',
  'transform="matrix(1 1 1 1 0 0)"',
  'transform="rotate(1e7)"',
  'transform="skewX(90)"',
  'transform="scale(1e7) scale(1e7) scale(1e-7)"',
  'viewBox="0 0 0 0"',
  'viewBox="0 0 1e-7 1e-7"',
  'viewBox="0 0 1e7 1"',
  'viewBox="0 0 -1 1"',
  'viewBox="1 2 3"',
  'preserveAspectRatio="none"',
  'preserveAspectRatio="xMidYMid"',
  'preserveAspectRatio="xMidyMid"',
  'display="none"',
  'fill="none"',
  'fill-rule="evenodd"',
  'style="fill:none;fill-rule:evenodd;;:;a:b:c"',
  'id="leaf"',
  'href="#leaf"',
  'xlink:href="#outer"',
  'width="1e7mm"',
  'height="1e-9"',
  'r="1e6"',
  'rx="1e7"',
  'd="M0 0A1e-300 1e7 45 1 1 1 1z"',
  'd="M0 0A1e7 1e-7 45 11 1e-9 0z"',
  'd="M0 0C1e6 1e6-1e6 1e6 0 0 9 9 1 0 0 0z"',
  'points="0,0 1e6,1e6 0,1e6 1e6,0"',
  'points="1 2 3"'
]

const at = (random: Random, n: number): number => Math.min(n - 1, Math.floor(random() * n))
const pick = <T>(random: Random, list: readonly T[]): T => list[at(random, list.length)]!

// Replaces one match of a pattern, chosen at random.
function replaceOne(text: string, pattern: RegExp, random: Random, by: (found: string) => string): string {
  const found = [...text.matchAll(pattern)]
  if (found.length === 0) return text
  const m = pick(random, found)
  return text.slice(0, m.index) + by(m[0]) + text.slice(m.index + m[0].length)
}

const NUMBER = /[+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?/gi

const MUTATIONS: readonly Mutation[] = [
  function flipBit(text, random) {
    const k = at(random, text.length)
    return (
      text.slice(0, k) + String.fromCharCode(text.charCodeAt(k) ^ (1 << at(random, 12))) + text.slice(k + 1)
    )
  },
  function swapTokens(text, random) {
    const tokens = text.split(/([\s"'<>=,()/]+)/)
    const [i, j] = [at(random, tokens.length), at(random, tokens.length)]
    ;[tokens[i], tokens[j]] = [tokens[j]!, tokens[i]!]
    return tokens.join('')
  },
  function truncate(text, random) {
    return random() < 0.5 ? text.slice(0, at(random, text.length)) : text.slice(at(random, text.length))
  },
  function cutOut(text, random) {
    const k = at(random, text.length)
    return text.slice(0, k) + text.slice(k + at(random, 40))
  },
  function repeat(text, random) {
    const k = at(random, text.length)
    const piece = text.slice(k, k + at(random, 200))
    return text.slice(0, k) + piece.repeat(1 + at(random, 20)) + text.slice(k)
  },
  function hugeNumber(text, random) {
    return replaceOne(text, NUMBER, random, () => pick(random, HUGE))
  },
  function otherNumber(text, random) {
    return replaceOne(text, NUMBER, random, n => String(Number(n) * 10 ** (8 * random() - 4)))
  },
  function unitGarbage(text, random) {
    return replaceOne(text, /"[-+.\d]+[a-z%]*"/gi, random, v => `${v.slice(0, -1)}${pick(random, UNITS)}"`)
  },
  function setAttribute(text, random) {
    const word = pick(random, WORDS)
    const same = new RegExp(`\\s${word.slice(0, word.indexOf('='))}="[^"]*"`, 'g')
    return replaceOne(text, /<[a-zA-Z]+(?=[\s/>])[^<>]*/g, random, element =>
      element.replace(same, '').replace(/^<[a-zA-Z]+/, tag => `${tag} ${word}`)
    )
  },
  function replaceAttribute(text, random) {
    return replaceOne(text, /[a-zA-Z-]+="[^"]*"/g, random, () => pick(random, WORDS))
  },
  function nestDeep(text, random) {
    const n = pick(random, [10, 50, 60, 62, 64, 100, 2000])
    const open = pick(random, ['<g>', '<g transform="scale(1.5)">', '<svg>', '<a>', '<x>'])
    const close = `</${/[a-z]+/.exec(open)![0]}>`
    return replaceOne(
      text,
      /<(?:rect|circle|path|ellipse|use)[^<>]*\/>/g,
      random,
      e => open.repeat(n) + e + close.repeat(n)
    )
  },
  function useLoop(text, random) {
    const id = pick(random, ['pair', 'leaf', 'outer', 'body', 'first', 'knob', 'loop'])
    return replaceOne(
      text,
      /<(?:rect|circle|path|ellipse|use)[^<>]*\/>/g,
      random,
      e => `<g id="loop">${e}<use href="#${id}"/></g>`
    )
  },
  function useBomb(text, random) {
    const levels = 2 + at(random, 12)
    let defs = ''
    for (let k = 1; k <= levels; k++)
      defs += `<g id="b${k}">${`<use href="#b${k - 1}" x="${k}"/>`.repeat(4)}</g>`
    return text.replace(
      '</svg>',
      `<defs><rect id="b0" width="1" height="1"/>${defs}</defs><use href="#b${levels}"/></svg>`
    )
  },
  function splice(text, random) {
    const other = pick(random, Object.values(SAMPLES))
    const k = at(random, text.length)
    const from = at(random, other.length)
    return text.slice(0, k) + other.slice(from, from + at(random, 300)) + text.slice(k)
  },
  function insertMarkup(text, random) {
    const markup = pick(random, [
      '<!DOCTYPE svg [<!ENTITY a "b">]>',
      '<!ENTITY x SYSTEM "file:///etc/hostname">',
      '&a;',
      '&#0;',
      '&#x41;',
      '<![CDATA[',
      ']]>',
      '<!--',
      '-->',
      '<?xml-stylesheet href="a.css"?>',
      '\u0000',
      '\uFEFF',
      '\uD800',
      '<script>1</script>',
      '<q:rect xmlns:q="urn:q"/>'
    ])
    const k = at(random, text.length)
    return text.slice(0, k) + markup + text.slice(k)
  },
  function swapTags(text, random) {
    const tag = pick(random, [
      'g',
      'svg',
      'use',
      'symbol',
      'defs',
      'path',
      'rect',
      'circle',
      'switch',
      'polygon',
      'text',
      'title'
    ])
    return replaceOne(text, /(?<=<\/?)[a-zA-Z]+/g, random, () => tag)
  }
]

const MILD = MUTATIONS.filter(m => ['otherNumber', 'setAttribute', 'swapTags', 'hugeNumber'].includes(m.name))

/** A broken, hostile or merely odd SVG text; the same for the same seed. */
export function mutateSvg(seed: number): string {
  const random = randomFrom(seed)
  // The first numbers of near seeds are alike enough to matter; a few are thrown away.
  for (let k = 0; k < 3; k++) random()
  let text = pick(random, Object.values(SAMPLES))
  const times = 1 + at(random, 3)
  for (let k = 0; k < times; k++) {
    // Most changes break a text for good; every second is of a kind that may leave it readable.
    const mutation = pick(random, random() < 0.5 ? MUTATIONS : MILD)
    if (text !== '') text = mutation(text, random)
  }
  return text
}
