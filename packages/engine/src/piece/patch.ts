/**
 * Changes to documents are values: RFC 6902 (JSON Patch). `applyPatch` gives a new document and leaves the
 * old one as it was; `invertPatch` gives the patch that takes the new one back.
 */
export type Operation =
  | { readonly op: 'add' | 'replace' | 'test'; readonly path: string; readonly value: unknown }
  | { readonly op: 'remove'; readonly path: string }
  | { readonly op: 'move' | 'copy'; readonly from: string; readonly path: string }

export type Patch = readonly Operation[]

/** A patch that cannot be applied: which operation, and why. The document is left as it was. */
export class PatchProblem extends Error {
  readonly index: number
  constructor(index: number, why: string) {
    super(`operation ${index}: ${why}`)
    this.name = 'PatchProblem'
    this.index = index
  }
}

type Json = null | boolean | number | string | Json[] | { [key: string]: Json }

/** The document after `patch`. All or nothing. @throws PatchProblem */
export function applyPatch<D>(document: D, patch: Patch): D {
  return run(document as unknown as Json, patch).after as unknown as D
}

/** The patch that takes the patched document back to `document`. @throws PatchProblem */
export function invertPatch(document: unknown, patch: Patch): Patch {
  return run(document as Json, patch).inverse
}

/** Longest patch taken: a fix is a few operations, a pasted part some hundreds. */
const MOST_OPERATIONS = 10_000

function run(document: Json, patch: Patch): { after: Json; inverse: Operation[] } {
  if (patch.length > MOST_OPERATIONS)
    throw new PatchProblem(MOST_OPERATIONS, `found ${patch.length} operations, allowed ${MOST_OPERATIONS}`)
  const root = { '': structuredCopy(document) } as { '': Json }
  const inverse: Operation[] = []
  patch.forEach((op, i) => {
    try {
      inverse.unshift(...step(root, op))
    } catch (e) {
      throw new PatchProblem(i, e instanceof Error ? e.message : String(e))
    }
  })
  return { after: root[''], inverse }
}

// Does one operation in place and returns the operations that undo it.
function step(root: { '': Json }, op: Operation): Operation[] {
  whole(op)
  switch (op.op) {
    case 'test':
      if (!equal(get(root, op.path), op.value as Json))
        throw new Error(`${op.path} is not what the test expects`)
      return []
    case 'add':
      return add(root, op.path, structuredCopy(op.value as Json))
    case 'remove':
      return [{ op: 'add', path: op.path, value: remove(root, op.path) }]
    case 'replace': {
      const old = structuredCopy(get(root, op.path))
      const { parent, key } = place(root, op.path)
      set(parent, key, structuredCopy(op.value as Json))
      return [{ op: 'replace', path: op.path, value: old }]
    }
    case 'copy':
      return add(root, op.path, structuredCopy(get(root, op.from)))
    case 'move': {
      if (op.path === op.from) return []
      if (op.path.startsWith(`${op.from}/`)) throw new Error(`${op.from} cannot move into itself`)
      const value = remove(root, op.from)
      const back: Operation = { op: 'add', path: op.from, value: structuredCopy(value) }
      return [...add(root, op.path, value), back]
    }
  }
}

// A patch from a file may lack anything (RFC 6902, section 4).
function whole(op: Operation): void {
  const given = op as unknown as Record<string, unknown> | null
  if (given === null || typeof given !== 'object') throw new Error('not an object with "op" and "path"')
  const needs = { add: 'value', replace: 'value', test: 'value', move: 'from', copy: 'from', remove: 'path' }
  const word = given['op']
  if (typeof word !== 'string' || !Object.hasOwn(needs, word))
    throw new Error(
      `found the operation ${JSON.stringify(word) ?? 'nothing'}; allowed: ${Object.keys(needs).join(', ')}`
    )
  if (typeof given['path'] !== 'string') throw new Error('"path" is not a JSON Pointer')
  const need = needs[word as keyof typeof needs]
  if (given[need] === undefined) throw new Error(`"${word}" without "${need}"`)
  if (need === 'from' && typeof given['from'] !== 'string') throw new Error('"from" is not a JSON Pointer')
}

function add(root: { '': Json }, path: string, value: Json): Operation[] {
  const { parent, key } = place(root, path)
  if (Array.isArray(parent)) {
    const at = key === '-' ? parent.length : index(key, parent.length)
    parent.splice(at, 0, value)
    return [{ op: 'remove', path: `${path.slice(0, path.lastIndexOf('/'))}/${at}` }]
  }
  const object = asObject(parent, path)
  if (Object.hasOwn(object, key)) {
    const old = object[key]!
    set(object, key, value)
    return [{ op: 'replace', path, value: old }]
  }
  set(object, key, value)
  return [{ op: 'remove', path }]
}

function remove(root: { '': Json }, path: string): Json {
  if (path === '') throw new Error('the whole document cannot be removed')
  const value = get(root, path)
  const { parent, key } = place(root, path)
  if (Array.isArray(parent)) parent.splice(index(key, parent.length - 1), 1)
  else delete asObject(parent, path)[key]
  return value
}

function get(root: { '': Json }, path: string): Json {
  const { parent, key } = place(root, path)
  if (Array.isArray(parent)) return parent[index(key, parent.length - 1)]!
  const object = asObject(parent, path)
  if (!Object.hasOwn(object, key)) throw new Error(`nothing at ${path}`)
  return object[key]!
}

function place(root: { '': Json }, path: string): { parent: Json; key: string } {
  if (path !== '' && !path.startsWith('/')) throw new Error(`"${path}" is not a JSON Pointer`)
  const tokens = path.split('/').map(t => {
    if (/~(?![01])/.test(t)) throw new Error(`"${path}" is not a JSON Pointer`)
    return t.replaceAll('~1', '/').replaceAll('~0', '~')
  })
  let parent: Json = root as unknown as { [key: string]: Json }
  for (const token of tokens.slice(0, -1)) {
    if (Array.isArray(parent)) parent = parent[index(token, parent.length - 1)]!
    else {
      const object: { [key: string]: Json } = asObject(parent, path)
      if (!Object.hasOwn(object, token)) throw new Error(`nothing at ${path}`)
      parent = object[token]!
    }
  }
  return { parent, key: tokens[tokens.length - 1]! }
}

function asObject(value: Json, path: string): { [key: string]: Json } {
  if (value === null || typeof value !== 'object' || Array.isArray(value))
    throw new Error(`nothing at ${path}`)
  return value
}

function index(key: string, most: number): number {
  if (!/^(0|[1-9][0-9]{0,8})$/.test(key) || Number(key) > most)
    throw new Error(`no place ${key} in a list; allowed 0 to ${most}`)
  return Number(key)
}

function set(parent: Json, key: string, value: Json): void {
  if (Array.isArray(parent)) parent[index(key, parent.length - 1)] = value
  // A plain assignment of "__proto__" would change the object's prototype.
  else Object.defineProperty(parent, key, { value, writable: true, enumerable: true, configurable: true })
}

function structuredCopy(value: Json): Json {
  return value === undefined ? null : (JSON.parse(JSON.stringify(value)) as Json)
}

function equal(a: Json, b: Json): boolean {
  if (a === b) return true
  if (a === null || b === null || typeof a !== 'object' || typeof b !== 'object') return false
  if (Array.isArray(a) !== Array.isArray(b)) return false
  const keysA = Object.keys(a)
  const keysB = Object.keys(b)
  if (keysA.length !== keysB.length) return false
  return keysA.every(
    k => Object.hasOwn(b, k) && equal((a as Record<string, Json>)[k]!, (b as Record<string, Json>)[k]!)
  )
}
