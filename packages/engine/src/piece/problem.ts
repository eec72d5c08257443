import type { z } from 'zod'
import { nearest } from './nearest.ts'
import { allowedAt, exampleAt, keysAt, wordsAt } from './schema-page.ts'

/** One thing wrong with a document: where, what was found, what is allowed, an example that is. */
export interface Problem {
  /** JSON Pointer (RFC 6901) into the document; "" is the document itself. */
  readonly path: string
  readonly found: string
  readonly allowed: string
  readonly example: string
}

/** Input that cannot be used. `source` names the file or part of it, when there is one. */
export class InputProblem extends Error {
  readonly problems: readonly Problem[]
  readonly source: string

  constructor(source: string, problems: readonly Problem[]) {
    super(problems.map(p => problemLine(source, p)).join('\n'))
    this.name = 'InputProblem'
    this.problems = problems
    this.source = source
  }
}

/** One line a person can act on. */
function problemLine(source: string, p: Problem): string {
  const where = p.path === '' ? '' : ` at ${readable(p.path)}`
  const example = p.example === '' ? '' : `; for example ${p.example}`
  return `${source}${where}: found ${p.found}; allowed: ${p.allowed}${example}`
}

/** "/pours/0/depth" as "pours[0].depth". */
export function readable(pointer: string): string {
  let out = ''
  for (const token of pointer.split('/').slice(1)) {
    const key = token.replaceAll('~1', '/').replaceAll('~0', '~')
    out += /^[0-9]+$/.test(key) ? `[${key}]` : out === '' ? key : `.${key}`
  }
  return out
}

/** A JSON Pointer from path tokens. */
function pointer(path: readonly PropertyKey[]): string {
  return path.map(p => `/${String(p).replaceAll('~', '~0').replaceAll('/', '~1')}`).join('')
}

/** What stands at a path of a document. */
function valueAt(document: unknown, path: readonly PropertyKey[]): unknown {
  let at: unknown = document
  for (const key of path) {
    if (at === null || typeof at !== 'object') return undefined
    at = (at as Record<PropertyKey, unknown>)[key]
  }
  return at
}

/** A value as a message shows it: JSON; what is long is cut short, or said by its size. */
export function shown(value: unknown): string {
  if (value === undefined) return 'nothing'
  if (typeof value === 'number' && !Number.isFinite(value)) return String(value)
  let text: string
  try {
    text = JSON.stringify(value) ?? String(value)
  } catch {
    text = String(value)
  }
  if (text.length <= MOST_SHOWN) return text
  if (Array.isArray(value)) return `a list of ${value.length}`
  if (typeof value === 'string') return `${text.slice(0, 40)}..." (${[...value].length} characters)`
  return `${text.slice(0, MOST_SHOWN - 3)}...`
}

/** Longest value a message shows, and longest list of words it offers, characters. */
const MOST_SHOWN = 60
const MOST_OFFERED = 160

/** "one of a, b, c": as many words as a line of a message takes, then how many more there are. */
export function oneOf(words: readonly string[]): string {
  let used = 0
  const taken = words.findIndex(w => {
    used += w.length + 2
    return used > MOST_OFFERED
  })
  if (taken < 0) return `one of ${words.join(', ')}`
  const few = Math.max(1, taken)
  const more = words.length - few
  return `one of ${words.slice(0, few).join(', ')}${more === 0 ? '' : ` and ${more} more`}`
}

/** Turns what the schema found into problems a maker can act on. */
export function problemsOf(
  issues: readonly z.core.$ZodIssue[],
  schema: z.ZodType,
  document: unknown
): Problem[] {
  const out: Problem[] = []
  const seen = new Set<string>()
  for (const p of issues.flatMap(i => fromIssue(i, [], schema, document))) {
    const key = `${p.path} ${p.found} ${p.allowed}`
    if (!seen.has(key)) out.push(p)
    seen.add(key)
  }
  return out
}

function fromIssue(
  issue: z.core.$ZodIssue,
  above: readonly PropertyKey[],
  schema: z.ZodType,
  document: unknown
): Problem[] {
  const path = [...above, ...issue.path]
  const value = valueAt(document, path)
  if (issue.code === 'unrecognized_keys') {
    const known = keysAt(schema, path, document)
    return issue.keys.map(key => {
      const near = nearest(key, known)
      return {
        path: pointer([...path, key]),
        found: `the unknown key ${shown(key)}`,
        allowed: near === null ? oneOf(known) : `the nearest known key is "${near}"`,
        example: near === null ? '' : `"${near}": ${exampleAt(schema, [...path, near], document)}`
      }
    })
  }
  const params = issue.code === 'custom' ? (issue.params ?? {}) : {}
  if (typeof params['allowed'] === 'string') {
    return [
      {
        path: pointer(path),
        found: shown(value),
        allowed: params['allowed'],
        example: String(params['example'] ?? exampleAt(schema, path, document))
      }
    ]
  }
  if (Array.isArray(params['oneOf'])) {
    const got = params['got'] as string[]
    const keys = (params['oneOf'] as string[]).join(', ')
    return [
      {
        path: pointer(path),
        found: got.length === 0 ? `none of ${keys}` : `${got.join(' and ')} together`,
        allowed: params['least'] === 1 ? `exactly one of ${keys}` : `at most one of ${keys}`,
        example: exampleAt(schema, path, document)
      }
    ]
  }
  if (issue.code === 'invalid_union') {
    // The branch that fits the kind of value tells more than the union as a whole.
    const branch = issue.errors.find(
      list =>
        list.length > 0 &&
        list.every(i => i.path.length > 0 || i.code === 'unrecognized_keys' || i.code === 'custom')
    )
    if (branch) return branch.flatMap(i => fromIssue(i, path, schema, document))
  }
  // Of a list of words, the one that was meant is the best example.
  const meant = typeof value === 'string' ? nearest(value, wordsAt(schema, path, document)) : null
  return [
    {
      path: pointer(path),
      found: shown(value),
      allowed: allowedAt(schema, path, document),
      example: meant === null ? exampleAt(schema, path, document) : JSON.stringify(meant)
    }
  ]
}
