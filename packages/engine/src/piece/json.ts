/** Where and why a text is not the JSON it should be. Lines and columns count from 1. */
export class JsonProblem extends Error {
  readonly line: number
  readonly column: number
  readonly found: string
  readonly allowed: string

  constructor(text: string, at: number, found: string, allowed: string) {
    const before = text.slice(0, at)
    const line = before.split('\n').length
    const column = at - before.lastIndexOf('\n')
    super(`line ${line}, column ${column}: found ${found}; allowed: ${allowed}`)
    this.name = 'JsonProblem'
    this.line = line
    this.column = column
    this.found = found
    this.allowed = allowed
  }
}

/** Deepest nesting a document may have; ours need about 12. */
export const MOST_DEPTH = 64
/** Largest document, characters: a grid-measured top of 400 × 400 points takes about 1.5 million. */
export const MOST_CHARACTERS = 16_000_000

const LITERAL = /true|false|null|-?(?:0|[1-9][0-9]*)(?:\.[0-9]+)?(?:[eE][+-]?[0-9]+)?/y
const BLANK = /[ \t\r\n]*/y

/**
 * Reads a JSON text (RFC 8259) within bounds: size, depth, no key twice in one object, no number beyond
 * double precision. JSON.parse builds the value; this scan only finds what it would pass over in silence,
 * or would report without a place.
 *
 * @throws JsonProblem
 */
export function readJson(text: string): unknown {
  if (text.length > MOST_CHARACTERS) {
    throw new JsonProblem(text.slice(0, 1), 0, `${text.length} characters`, `at most ${MOST_CHARACTERS}`)
  }
  const body = text.charCodeAt(0) === 0xfeff ? text.slice(1) : text
  scan(body)
  return JSON.parse(body) as unknown
}

function scan(text: string): void {
  // One entry an open object or array: the keys seen so far, or null for an array.
  const open: (Set<string> | null)[] = []
  let at = blanks(text, 0)
  if (at >= text.length) throw new JsonProblem(text, at, 'an empty file', 'a JSON object')
  let want: 'value' | 'key' | 'next' = 'value'
  for (;;) {
    if (want === 'key') at = key(text, at, open[open.length - 1]!)
    if (want !== 'next') {
      const c = text[at]
      if (c === '{' || c === '[') {
        if (open.length >= MOST_DEPTH)
          throw new JsonProblem(
            text,
            at,
            `nesting deeper than ${MOST_DEPTH}`,
            `at most ${MOST_DEPTH} objects and lists in each other`
          )
        open.push(c === '{' ? new Set() : null)
        at = blanks(text, at + 1)
        if (text[at] !== (c === '{' ? '}' : ']')) {
          want = c === '{' ? 'key' : 'value'
          continue
        }
      } else {
        at = scalar(text, at)
      }
    }
    at = blanks(text, at)
    if (open.length === 0) {
      if (at < text.length)
        throw new JsonProblem(text, at, show(text, at), 'nothing after the end of the document')
      return
    }
    const inside = open[open.length - 1]!
    const close = inside === null ? ']' : '}'
    if (text[at] === close) {
      open.pop()
      at++
      want = 'next'
    } else if (text[at] === ',') {
      at = blanks(text, at + 1)
      if (text[at] === close)
        throw new JsonProblem(text, at, `a comma before ${close}`, 'no comma after the last entry')
      want = inside === null ? 'value' : 'key'
    } else {
      throw new JsonProblem(text, at, show(text, at), `a comma or ${close}`)
    }
  }
}

function key(text: string, at: number, seen: Set<string>): number {
  if (text[at] !== '"') throw new JsonProblem(text, at, show(text, at), 'a key in double quotes')
  const end = stringEnd(text, at)
  const typed = text.slice(at, end)
  const name = JSON.parse(typed) as string
  if (seen.has(name)) {
    throw new JsonProblem(
      text,
      at,
      `the key ${typed.slice(0, 60)} a second time`,
      'each key once in an object'
    )
  }
  seen.add(name)
  const colon = blanks(text, end)
  if (text[colon] !== ':') throw new JsonProblem(text, colon, show(text, colon), 'a colon after the key')
  return blanks(text, colon + 1)
}

function scalar(text: string, at: number): number {
  if (text[at] === '"') return stringEnd(text, at)
  LITERAL.lastIndex = at
  const found = LITERAL.exec(text)
  if (!found) {
    throw new JsonProblem(
      text,
      at,
      show(text, at),
      'a number, text in double quotes, true, false, null, an object or a list'
    )
  }
  if (/^[-0-9]/.test(found[0]) && !Number.isFinite(Number(found[0]))) {
    throw new JsonProblem(text, at, `the number ${found[0].slice(0, 20)}`, 'numbers up to about 1.8e308')
  }
  return LITERAL.lastIndex
}

// A loop and not a regular expression: a path of some megabytes would exhaust the expression's stack.
function stringEnd(text: string, start: number): number {
  for (let at = start + 1; at < text.length; at++) {
    const c = text.charCodeAt(at)
    if (c === 34) return at + 1
    if (c < 32)
      throw new JsonProblem(
        text,
        at,
        show(text, at),
        'text on one line, control characters written as \\n, \\t, \\u00XX'
      )
    if (c === 92) {
      const sequel = /^(?:["\\/bfnrt]|u[0-9a-fA-F]{4})/.exec(text.slice(at + 1, at + 6))
      if (!sequel)
        throw new JsonProblem(text, at, 'a backslash', 'one of \\" \\\\ \\/ \\b \\f \\n \\r \\t \\uXXXX')
      at += sequel[0].length
    }
  }
  throw new JsonProblem(text, start, 'text that never ends', 'a closing double quote')
}

function blanks(text: string, at: number): number {
  BLANK.lastIndex = at
  BLANK.test(text)
  return BLANK.lastIndex
}

function show(text: string, at: number): string {
  if (at >= text.length) return 'the end of the file'
  // A word that is none of JSON's, as a whole: NaN, undefined, True.
  const word = /^[A-Za-z_]{2,20}/.exec(text.slice(at, at + 20))
  if (word) return JSON.stringify(word[0])
  const c = text.codePointAt(at)!
  return c < 32 || c === 127 || c === 0xfffd
    ? `the character U+${c.toString(16).toUpperCase().padStart(4, '0')}`
    : JSON.stringify(String.fromCodePoint(c))
}
