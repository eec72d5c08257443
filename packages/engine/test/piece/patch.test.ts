import { describe, expect, it } from 'vitest'
import type { Operation, Patch } from '../../src/piece/patch.ts'
import { applyPatch, invertPatch, PatchProblem } from '../../src/piece/patch.ts'
import type { Chance } from '../stack/random.ts'
import { chance } from '../stack/random.ts'
import type { Json } from './generate.ts'
import { PIECES } from './rich.ts'

/** RFC 6902 (JSON Patch, April 2013), appendix A (memory). A.13 is in json.test.ts: a key twice in an operation. */
const appendix: readonly { name: string; document: Json; patch: Patch; after: Json | 'an error' }[] = [
  {
    name: 'A.1 adding an object member',
    document: { foo: 'bar' },
    patch: [{ op: 'add', path: '/baz', value: 'qux' }],
    after: { baz: 'qux', foo: 'bar' }
  },
  {
    name: 'A.2 adding an array element',
    document: { foo: ['bar', 'baz'] },
    patch: [{ op: 'add', path: '/foo/1', value: 'qux' }],
    after: { foo: ['bar', 'qux', 'baz'] }
  },
  {
    name: 'A.3 removing an object member',
    document: { baz: 'qux', foo: 'bar' },
    patch: [{ op: 'remove', path: '/baz' }],
    after: { foo: 'bar' }
  },
  {
    name: 'A.4 removing an array element',
    document: { foo: ['bar', 'qux', 'baz'] },
    patch: [{ op: 'remove', path: '/foo/1' }],
    after: { foo: ['bar', 'baz'] }
  },
  {
    name: 'A.5 replacing a value',
    document: { baz: 'qux', foo: 'bar' },
    patch: [{ op: 'replace', path: '/baz', value: 'boo' }],
    after: { baz: 'boo', foo: 'bar' }
  },
  {
    name: 'A.6 moving a value',
    document: { foo: { bar: 'baz', waldo: 'fred' }, qux: { corge: 'grault' } },
    patch: [{ op: 'move', from: '/foo/waldo', path: '/qux/thud' }],
    after: { foo: { bar: 'baz' }, qux: { corge: 'grault', thud: 'fred' } }
  },
  {
    name: 'A.7 moving an array element',
    document: { foo: ['all', 'grass', 'cows', 'eat'] },
    patch: [{ op: 'move', from: '/foo/1', path: '/foo/3' }],
    after: { foo: ['all', 'cows', 'eat', 'grass'] }
  },
  {
    name: 'A.8 testing a value: success',
    document: { baz: 'qux', foo: ['a', 2, 'c'] },
    patch: [
      { op: 'test', path: '/baz', value: 'qux' },
      { op: 'test', path: '/foo/1', value: 2 }
    ],
    after: { baz: 'qux', foo: ['a', 2, 'c'] }
  },
  {
    name: 'A.9 testing a value: error',
    document: { baz: 'qux' },
    patch: [{ op: 'test', path: '/baz', value: 'bar' }],
    after: 'an error'
  },
  {
    name: 'A.10 adding a nested member object',
    document: { foo: 'bar' },
    patch: [{ op: 'add', path: '/child', value: { grandchild: {} } }],
    after: { foo: 'bar', child: { grandchild: {} } }
  },
  {
    name: 'A.11 ignoring unrecognized elements',
    document: { foo: 'bar' },
    patch: [{ op: 'add', path: '/baz', value: 'qux', xyz: 123 } as Operation],
    after: { foo: 'bar', baz: 'qux' }
  },
  {
    name: 'A.12 adding to a nonexistent target',
    document: { foo: 'bar' },
    patch: [{ op: 'add', path: '/baz/bat', value: 'qux' }],
    after: 'an error'
  },
  {
    name: 'A.14 ~ escape ordering',
    document: { '/': 9, '~1': 10 },
    patch: [{ op: 'test', path: '/~01', value: 10 }],
    after: { '/': 9, '~1': 10 }
  },
  {
    name: 'A.15 comparing strings and numbers',
    document: { '/': 9, '~1': 10 },
    patch: [{ op: 'test', path: '/~01', value: '10' }],
    after: 'an error'
  },
  {
    name: 'A.16 adding an array value',
    document: { foo: ['bar'] },
    patch: [{ op: 'add', path: '/foo/-', value: ['abc', 'def'] }],
    after: { foo: ['bar', ['abc', 'def']] }
  }
]

/** RFC 6901 (JSON Pointer, April 2013), section 5: the document and what each pointer stands for (memory). */
const POINTED: Json = {
  foo: ['bar', 'baz'],
  '': 0,
  'a/b': 1,
  'c%d': 2,
  'e^f': 3,
  'g|h': 4,
  'i\\j': 5,
  'k"l': 6,
  ' ': 7,
  'm~n': 8
}
const pointers: readonly (readonly [string, Json])[] = [
  ['', POINTED],
  ['/foo', ['bar', 'baz']],
  ['/foo/0', 'bar'],
  ['/', 0],
  ['/a~1b', 1],
  ['/c%d', 2],
  ['/e^f', 3],
  ['/g|h', 4],
  ['/i\\j', 5],
  ['/k"l', 6],
  ['/ ', 7],
  ['/m~0n', 8]
]

const clone = (x: Json) => JSON.parse(JSON.stringify(x)) as Json

describe('a patch (RFC 6902)', () => {
  it.each(appendix.map(a => [a.name, a] as const))('does example %s', (_, { document, patch, after }) => {
    const before = clone(document)
    if (after === 'an error') expect(() => applyPatch(document, patch)).toThrow(PatchProblem)
    else {
      expect(applyPatch(document, patch)).toEqual(after)
      expect(applyPatch(after, invertPatch(document, patch))).toEqual(before)
    }
    expect(document, 'the document given stays as it was').toEqual(before)
  })

  it.each(pointers)('finds what the pointer "%s" stands for (RFC 6901, section 5)', (path, value) => {
    expect(applyPatch(POINTED, [{ op: 'test', path, value }])).toEqual(POINTED)
    expect(() => applyPatch(POINTED, [{ op: 'test', path, value: 'another' }])).toThrow('operation 0')
  })

  it.each([
    ['a pointer without a slash', { op: 'remove', path: 'foo' }, 'is not a JSON Pointer'],
    ['a tilde alone', { op: 'remove', path: '/m~n' }, 'is not a JSON Pointer'],
    ['a tilde and a 2', { op: 'remove', path: '/m~2n' }, 'is not a JSON Pointer'],
    ['a leading zero', { op: 'remove', path: '/foo/01' }, 'no place 01 in a list'],
    ['a negative place', { op: 'remove', path: '/foo/-1' }, 'no place -1 in a list'],
    ['a place past the end', { op: 'remove', path: '/foo/2' }, 'no place 2 in a list; allowed 0 to 1'],
    ['a place far past the end', { op: 'add', path: '/foo/1e9', value: 1 }, 'no place 1e9'],
    ['the place after the last, removed', { op: 'remove', path: '/foo/-' }, 'no place -'],
    ['the length of a list', { op: 'test', path: '/foo/length', value: 2 }, 'no place length'],
    ['what is not there', { op: 'remove', path: '/nothing' }, 'nothing at /nothing'],
    ['what is not there, replaced', { op: 'replace', path: '/nothing', value: 1 }, 'nothing at /nothing'],
    ['a key of a number', { op: 'add', path: '/a~1b/c', value: 1 }, 'nothing at /a~1b/c'],
    ['the whole document removed', { op: 'remove', path: '' }, 'cannot be removed'],
    ['a move into itself', { op: 'move', from: '/foo', path: '/foo/0' }, 'cannot move into itself'],
    ['a move of the whole', { op: 'move', from: '', path: '/foo' }, 'cannot move into itself'],
    ['a prototype', { op: 'add', path: '/__proto__/polluted', value: 1 }, 'nothing at'],
    ['a prototype read', { op: 'copy', from: '/__proto__', path: '/x' }, 'nothing at'],
    ['a constructor', { op: 'add', path: '/constructor/prototype/polluted', value: 1 }, 'nothing at'],
    ['a prototype of a list', { op: 'add', path: '/foo/__proto__/polluted', value: 1 }, 'no place __proto__'],
    ['an unknown operation', { op: 'merge', path: '/foo' }, 'found the operation "merge"; allowed: add'],
    ['an operation of a prototype', { op: 'toString', path: '/foo' }, 'found the operation "toString"'],
    ['no operation', { path: '/foo' }, 'found the operation nothing'],
    ['no path', { op: 'remove' }, '"path" is not a JSON Pointer'],
    ['a number as path', { op: 'remove', path: 5 }, '"path" is not a JSON Pointer'],
    ['no value', { op: 'add', path: '/x' }, '"add" without "value"'],
    ['no from', { op: 'copy', path: '/x' }, '"copy" without "from"'],
    ['a number as from', { op: 'move', from: 3, path: '/x' }, '"from" is not a JSON Pointer'],
    ['nothing', null, 'not an object with "op" and "path"']
  ])('refuses %s and changes nothing', (_, operation, words) => {
    const before = clone(POINTED)
    const patch = [{ op: 'add', path: '/new', value: 1 }, operation] as unknown as Patch
    let problem: unknown
    try {
      applyPatch(POINTED, patch)
    } catch (e) {
      problem = e
    }
    expect(problem).toBeInstanceOf(PatchProblem)
    expect((problem as PatchProblem).index).toBe(1)
    expect((problem as PatchProblem).message).toContain(words)
    expect((problem as PatchProblem).message).not.toMatch(/undefined|\[object/)
    expect(POINTED).toEqual(before)
    expect(({} as Record<string, unknown>)['polluted']).toBeUndefined()
  })

  it('sets a key named as a prototype as a plain key, and takes it back', () => {
    const patch: Patch = [{ op: 'add', path: '/__proto__', value: { polluted: 1 } }]
    const after = applyPatch({ a: 1 } as object, patch)
    expect(JSON.stringify(after)).toBe('{"a":1,"__proto__":{"polluted":1}}')
    expect(Object.getPrototypeOf(after)).toBe(Object.prototype)
    expect(JSON.stringify(applyPatch(after, invertPatch({ a: 1 }, patch)))).toBe('{"a":1}')
  })

  it('shares nothing with the patch or the document', () => {
    const value = { deep: [1] }
    const document = { a: { b: [1] } }
    const after = applyPatch(document, [{ op: 'add', path: '/c', value }]) as unknown as typeof document & {
      c: typeof value
    }
    after.a.b.push(2)
    after.c.deep.push(2)
    expect(document).toEqual({ a: { b: [1] } })
    expect(value).toEqual({ deep: [1] })
  })

  it('is undone by its inverse and done again by the inverse of that, 400 patches of up to 8 operations', () => {
    for (let seed = 1; seed <= 400; seed++) {
      const c = chance(seed)
      const document = clone(c.pick(PIECES) as unknown as Json)
      const { patch, after } = seeded(document, c)
      const said = `seed ${seed}: ${JSON.stringify(patch)}`
      const inverse = invertPatch(document, patch)
      expect(applyPatch(document, patch), said).toEqual(after)
      expect(applyPatch(after, inverse), said).toEqual(document)
      expect(applyPatch(document, invertPatch(after, inverse)), said).toEqual(after)
    }
  })
})

/** A patch that can be done, drawn by lot one operation after another, and what it gives. */
function seeded(document: Json, c: Chance): { patch: Operation[]; after: Json } {
  const patch: Operation[] = []
  let after = document
  for (let k = c.whole(1, 8); k > 0; k--) {
    const all = paths(after)
    const inner = all.filter(p => p !== '')
    const value = clone(c.pick([1, 'x', null, [1, 2], { a: { b: 1 } }, after]))
    const under = () => {
      const parent = c.pick(all.filter(p => at(after, p) !== null && typeof at(after, p) === 'object'))
      const list = Array.isArray(at(after, parent))
      return `${parent}/${list ? c.pick(['-', '0']) : c.pick(['new', 'a~1b', 'm~0n', '', 'id'])}`
    }
    const operation = c.pick<Operation>([
      { op: 'add', path: under(), value },
      { op: 'remove', path: c.pick(inner) },
      { op: 'replace', path: c.pick(all), value },
      { op: 'copy', from: c.pick(all), path: under() },
      { op: 'move', from: c.pick(inner), path: under() },
      { op: 'move', from: c.pick(inner), path: c.pick(inner) }
    ])
    try {
      after = applyPatch(after, [operation])
      patch.push(operation)
    } catch (e) {
      // A move into itself, or past the end of a list that the move made shorter.
      if (!(e instanceof PatchProblem)) throw e
    }
    if (after === null || typeof after !== 'object' || Object.keys(after).length < 2) break
    if (JSON.stringify(after).length > 20_000) break
  }
  return { patch, after }
}

function paths(value: Json, path = ''): string[] {
  if (value === null || typeof value !== 'object') return [path]
  return [
    path,
    ...Object.entries(value).flatMap(([k, v]) =>
      paths(v, `${path}/${k.replaceAll('~', '~0').replaceAll('/', '~1')}`)
    )
  ]
}

function at(value: Json, path: string): Json {
  let v = value
  for (const token of path.split('/').slice(1))
    v = (v as Record<string, Json>)[token.replaceAll('~1', '/').replaceAll('~0', '~')]!
  return v
}
