import { describe, expect, it } from 'vitest'
import { entriesOf } from '../../src/piece/entry.ts'
import type { PieceDocument } from '../../src/piece/piece-schema.ts'
import { checkPiece } from '../../src/piece/read.ts'
import { orderFaults } from '../../src/steps/fault.ts'
import { orderOf } from '../../src/steps/order.ts'
import { plainPiece } from '../stack/build.ts'

type StepDocument = NonNullable<PieceDocument['steps']>[number]

const piece = (steps: StepDocument[]): PieceDocument =>
  plainPiece({
    flatten: { back: 1, front: 1 },
    timbers: [{ id: 'slab', species: 'ash-white', outline: { rectangle: [80, 60] }, thickness: 18 }],
    pours: [
      { id: 'body', resin: 'medium', depth: 20 },
      { id: 'coat', resin: 'thin', kind: 'flood', depth: 2 },
      { id: 'inlay', resin: 'thin', kind: 'inlay', into: ['line'], fill: 'cut' }
    ],
    cuts: [
      { id: 'line', face: 'front', shape: { circle: 30 }, depth: 3 },
      { id: 'pocket', face: 'back', shape: { circle: 40 }, depth: 8 }
    ],
    markings: [
      {
        id: 'scale',
        filled: [{ pigment: 'white-paste', percent: 3 }],
        linear: { from: [-50, 40], to: [50, 40], length: 6, at: [0, 1] }
      }
    ],
    hardware: [{ id: 'works', kind: 'quartz-movement', in: 'pocket' }],
    steps
  })

/** An order without fault: what each pair below departs from. */
const sound: readonly StepDocument[] = [
  { do: 'make mould' },
  { do: 'set timber', what: 'slab' },
  { do: 'pour', what: 'body' },
  { do: 'demould' },
  { do: 'flatten', face: 'front' },
  { do: 'pour', what: 'coat' },
  { do: 'cut', what: 'line' },
  { do: 'pour', what: 'inlay' },
  { do: 'mark', what: 'scale' },
  { do: 'fill', what: 'scale' },
  { do: 'sand', face: 'front' },
  { do: 'turn over' },
  { do: 'flatten', face: 'back' },
  { do: 'cut', what: 'pocket' },
  { do: 'trim' },
  { do: 'work edges' },
  { do: 'coat', face: 'both' },
  { do: 'fit', what: 'works' },
  { do: 'deliver' }
]

function faultsOf(steps: readonly StepDocument[]): string[] {
  const read = checkPiece(piece([...steps]), 'test').value
  const entries = entriesOf(read, 'test')
  return orderFaults(read, entries, orderOf(read, entries)).map(f => `${f.step.kind}: ${f.says}`)
}

const index = (doing: string, what?: string) =>
  sound.findIndex(s => s.do === doing && (what === undefined || ('what' in s && s.what === what)))

/** The sound order with one step taken out and put elsewhere (before the step at `to`, in the old numbering). */
function moved(from: number, to: number): StepDocument[] {
  const rest = sound.filter((_, i) => i !== from)
  rest.splice(to > from ? to - 1 : to, 0, sound[from]!)
  return rest
}
const without = (at: number) => sound.filter((_, i) => i !== at)
const twice = (at: number) => [...sound.slice(0, at + 1), sound[at]!, ...sound.slice(at + 1)]

describe('faults of an order', () => {
  it('are none in a sound one', () => {
    expect(faultsOf(sound)).toEqual([])
  })

  const pairs: readonly (readonly [name: string, steps: StepDocument[], faults: string[]])[] = [
    [
      'pouring before the mould stands',
      moved(index('pour', 'body'), 0),
      ['pour: the mould is not made yet', 'set timber: resin covers the place of slab by then']
    ],
    [
      'setting timber before the mould stands',
      moved(index('set timber'), 0),
      ['set timber: the mould is not made yet']
    ],
    [
      'setting timber where resin is',
      moved(index('set timber'), 3),
      ['set timber: resin covers the place of slab by then']
    ],
    [
      'pouring when the mould is gone',
      moved(index('pour', 'body'), 4),
      ['demould: 1 of the pours into the mould come later', 'pour: the mould is gone by then']
    ],
    [
      'working a face in the mould',
      moved(index('flatten'), 3),
      ['flatten: it is still in the mould, or not cast yet']
    ],
    [
      'working a face that lies down',
      moved(index('turn over'), index('sand')),
      ['sand: the front lies down: turn it over first']
    ],
    [
      'cutting a face that lies down',
      moved(index('cut', 'pocket'), index('turn over')),
      ['cut: the back lies down: turn it over first']
    ],
    [
      'flooding a face that lies down',
      moved(index('pour', 'coat'), index('work edges')),
      ['pour: the front lies down: turn it over first']
    ],
    [
      'filling a cut that is not there',
      moved(index('pour', 'inlay'), index('cut', 'line')),
      ['pour: line is not cut yet']
    ],
    [
      'filling a cut whose face lies down',
      moved(index('pour', 'inlay'), index('work edges')),
      ['pour: the front lies down: turn it over first']
    ],
    [
      'filling a scale that is not there',
      moved(index('fill'), index('mark')),
      ['fill: scale is not cut yet']
    ],
    [
      'fitting into a pocket that is not there',
      moved(index('fit'), index('cut', 'pocket')),
      ['fit: pocket is not cut yet']
    ],
    [
      'turning over in the mould',
      [...sound.slice(0, 3), { do: 'turn over' }, { do: 'turn over' }, ...sound.slice(3)],
      [
        'turn over: it is still in the mould, or not cast yet',
        'turn over: it is still in the mould, or not cast yet'
      ]
    ],
    [
      'working edges in the mould',
      moved(index('work edges'), 3),
      ['work edges: it is still in the mould, or not cast yet']
    ],
    ['trimming in the mould', moved(index('trim'), 3), ['trim: it is still in the mould, or not cast yet']],
    ['trimming what is coated', moved(index('trim'), index('fit')), ['trim: it is coated by then']],
    ['trimming twice', twice(index('trim')), ['trim: trims it to the outline a second time']],
    ['anything after delivery', moved(index('deliver'), index('fit')), ['fit: it is delivered by then']],
    ['making the mould twice', twice(0), ['make mould: makes the mould a second time']],
    ['setting timber twice', twice(index('set timber')), ['set timber: sets slab a second time']],
    ['pouring twice', twice(index('pour', 'body')), ['pour: pours body a second time']],
    [
      'taking it out twice',
      twice(index('demould')),
      ['demould: there is no mould to take it out of', 'demould: takes it out of the mould a second time']
    ],
    ['cutting twice', twice(index('cut', 'line')), ['cut: cuts line a second time']],
    ['marking twice', twice(index('mark')), ['mark: cuts scale a second time']],
    ['filling twice', twice(index('fill')), ['fill: fills scale a second time']],
    ['fitting twice', twice(index('fit')), ['fit: fits works a second time']],
    [
      'no mould',
      without(0),
      [
        'set timber: the mould is not made yet',
        'pour: the mould is not made yet',
        'demould: there is no mould to take it out of',
        'deliver: the mould is never made'
      ]
    ],
    ['a pour left out', without(index('pour', 'coat')), ['deliver: coat is never poured']],
    ['a timber left out', without(index('set timber')), ['deliver: slab is never set']],
    [
      'a cut left out',
      without(index('cut', 'line')),
      ['pour: line is not cut yet', 'deliver: line is never cut']
    ],
    [
      'a scale left out',
      sound.filter(s => s.do !== 'mark' && s.do !== 'fill'),
      ['deliver: scale is never cut', 'deliver: scale is never filled']
    ],
    ['a scale left empty', without(index('fill')), ['deliver: scale is never filled']],
    ['hardware left out', without(index('fit')), ['deliver: works is never fitted']]
  ]
  for (const [name, steps, faults] of pairs) {
    it(`say what is wrong: ${name}`, () => {
      expect(faultsOf(steps)).toEqual(faults)
    })
  }

  it('are none where the maker trims nothing', () => {
    expect(faultsOf(without(index('trim')))).toEqual([])
  })

  it('say that it is never taken out of the mould', () => {
    expect(faultsOf(sound.slice(0, 3)).at(-1)).toBe('pour: it is never taken out of the mould')
  })

  it('know that hardware cast into a pour needs no fitting', () => {
    const read = checkPiece(
      plainPiece({
        pours: [{ id: 'body', resin: 'medium', depth: 20 }],
        hardware: [{ id: 'insert', kind: 'insert-m6', castIn: 'body' }]
      }),
      'test'
    ).value
    const entries = entriesOf(read, 'test')
    const steps = orderOf(read, entries)
    expect(steps.some(s => s.kind === 'fit')).toBe(false)
    expect(orderFaults(read, entries, steps)).toEqual([])
  })
})
