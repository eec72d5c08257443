/**
 * Edits a shop's text in one place and leaves all else as it was typed: order, blanks, units.
 * The texts given here have been read as JSON before, so that the walk meets no error.
 */

/** The shop's text with one more cup test at the resin of that index. `entry` is JSON. */
export function withCupTest(text: string, index: number, entry: string): string {
  const resin = valueAt(text, ['resins', index])!
  const tests = valueAt(text, ['resins', index, 'cupTests'])
  return tests === null ? withKey(text, resin, 'cupTests', `[${entry}]`) : withItem(text, tests, entry)
}

/** The shop's text with one more resin. */
export function withResin(text: string, entry: string): string {
  const resins = valueAt(text, ['resins'])
  return resins === null
    ? withKey(text, valueAt(text, [])!, 'resins', `[${entry}]`)
    : withItem(text, resins, entry)
}

interface Span {
  readonly from: number
  /** After its last character. */
  readonly to: number
}

function withItem(text: string, list: Span, entry: string): string {
  return put(text, list, /^\[\s*\]$/.test(text.slice(list.from, list.to)), entry)
}

function withKey(text: string, object: Span, key: string, value: string): string {
  return put(text, object, /^\{\s*\}$/.test(text.slice(object.from, object.to)), `"${key}": ${value}`)
}

// Before the closing bracket: on a line of its own where the bracket has one, else on the same line.
function put(text: string, span: Span, empty: boolean, what: string): string {
  let end = span.to - 1
  while (/\s/.test(text[end - 1]!)) end--
  const tail = text.slice(end, span.to - 1)
  const line = /\n([ \t]*)$/.exec(tail)
  const indent = line === null ? (empty ? '' : ' ') : `\n${line[1]}  `
  return `${text.slice(0, end)}${empty ? '' : ','}${indent}${what}${tail}${text.slice(span.to - 1)}`
}

/** Where the value at a path stands; null where there is none. */
function valueAt(text: string, path: readonly (string | number)[]): Span | null {
  let at = blanks(text, text.charCodeAt(0) === 0xfeff ? 1 : 0)
  for (const wanted of path) {
    const open = text[at]
    if (open !== (typeof wanted === 'number' ? '[' : '{')) return null
    at = blanks(text, at + 1)
    let found = false
    for (let i = 0; !found && text[at] !== ']' && text[at] !== '}'; i++) {
      if (typeof wanted === 'string') {
        const end = valueEnd(text, at)
        const key = JSON.parse(text.slice(at, end)) as string
        at = blanks(text, blanks(text, end) + 1)
        found = key === wanted
      } else found = i === wanted
      if (found) break
      at = blanks(text, valueEnd(text, at))
      if (text[at] === ',') at = blanks(text, at + 1)
    }
    if (!found) return null
  }
  return { from: at, to: valueEnd(text, at) }
}

function blanks(text: string, at: number): number {
  let i = at
  while (/\s/.test(text[i] ?? '')) i++
  return i
}

function valueEnd(text: string, at: number): number {
  const c = text[at]
  if (c === '"') return stringEnd(text, at)
  let i = at
  if (c !== '[' && c !== '{') {
    while (i < text.length && !/[\s,\]}]/.test(text[i]!)) i++
    return i
  }
  for (let depth = 0; i < text.length; i++) {
    const d = text[i]!
    if (d === '"') i = stringEnd(text, i) - 1
    else if (d === '[' || d === '{') depth++
    else if (d === ']' || d === '}') depth--
    if (depth === 0) return i + 1
  }
  return i
}

function stringEnd(text: string, at: number): number {
  let i = at + 1
  while (i < text.length && text[i] !== '"') i += text[i] === '\\' ? 2 : 1
  return i + 1
}
