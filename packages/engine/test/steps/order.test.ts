import { describe, expect, it } from 'vitest'
import { entriesOf } from '../../src/piece/entry.ts'
import type { PieceDocument } from '../../src/piece/piece-schema.ts'
import { checkPiece } from '../../src/piece/read.ts'
import { flattenBy, SANDED_AFTER_FILL_MM } from '../../src/steps/allowance.ts'
import { orderFaults } from '../../src/steps/fault.ts'
import { orderOf } from '../../src/steps/order.ts'
import type { Step } from '../../src/steps/step.ts'
import { plainPiece } from '../stack/build.ts'
import { seededPiece } from '../stack/seeded-piece.ts'

function orderOfDocument(document: PieceDocument, waste = false): { steps: Step[]; faults: string[] } {
  const piece = checkPiece(document, 'test').value
  const entries = entriesOf(piece, 'test')
  const steps = orderOf(piece, entries, waste)
  return { steps, faults: orderFaults(piece, entries, steps).map(f => `${f.step.number}: ${f.says}`) }
}

type StepDocuments = NonNullable<PieceDocument['steps']>

const says = (document: PieceDocument) => orderOfDocument(document).steps.map(s => s.says)

const rich = (more: Partial<PieceDocument> = {}): PieceDocument =>
  plainPiece({
    flatten: { back: 1, front: 1.5 },
    timbers: [{ id: 'slab', species: 'ash-white', outline: { rectangle: [80, 60] }, thickness: 18 }],
    pours: [
      { id: 'seal', resin: 'thin', kind: 'seal', depth: 0.2 },
      { id: 'low', resin: 'medium', depth: 10 },
      { id: 'high', resin: 'medium', depth: 10, stones: [{ kind: 'river-gravel', all: true }] },
      { id: 'coat', resin: 'thin', kind: 'flood', face: 'front', depth: 2 },
      { id: 'inlay', resin: 'thin', kind: 'inlay', into: ['line'], fill: 'cut' }
    ],
    cuts: [
      {
        id: 'line',
        face: 'front',
        kind: 'groove',
        along: {
          points: [
            [-40, 0],
            [40, 0]
          ]
        },
        width: 4,
        depth: 3
      },
      { id: 'pocket', face: 'back', shape: { circle: 40 }, depth: 8 },
      { id: 'rim', face: 'front', kind: 'outline', shape: { circle: 190 }, through: true }
    ],
    markings: [
      {
        id: 'scale',
        filled: [{ pigment: 'white-paste', percent: 3 }],
        linear: { from: [-50, 40], to: [50, 40], length: 6, at: [0, 1] }
      }
    ],
    hardware: [{ id: 'works', kind: 'quartz-movement', in: 'pocket' }],
    edges: [{ profile: 'chamfer', size: 2 }],
    finish: { both: { coat: 'hardwax-oil' } },
    ...more
  })

describe('the usual order', () => {
  it('is without fault on 300 seeded pieces, and names every entry once', () => {
    for (let seed = 0; seed < 300; seed++) {
      const document = seededPiece(seed)
      const { steps, faults } = orderOfDocument(document, seed % 2 === 1)
      expect(faults, `seed ${seed}`).toEqual([])
      const count = (kind: Step['kind']) => steps.filter(s => s.kind === kind).length
      expect(count('pour')).toBe(document.pours.length)
      expect(count('cut')).toBe(document.cuts?.length ?? 0)
      expect(count('mark')).toBe(document.markings?.length ?? 0)
      const cast = document.pours.some(p => (p.kind ?? 'cast') === 'cast')
      expect(count('set timber')).toBe(cast ? (document.timbers?.length ?? 0) : 0)
      expect(count('make mould')).toBe(cast ? 1 : 0)
      expect(count('trim')).toBe(seed % 2)
      expect(steps.map(s => s.number)).toEqual(steps.map((_, i) => i + 1))
    }
  })

  it('pours, turns up the face that lay down, works it, then the other; floods before cuts, inlays after theirs, the outline last', () => {
    expect(says(rich())).toEqual([
      'Make the mould',
      'Prepare slab',
      'Seal with seal',
      'Set slab',
      'Wait',
      'Pour low',
      'Wait',
      'Set the stones of high',
      'Pour high',
      'Wait',
      'Take it out of the mould',
      'Wait',
      'Turn over, back up',
      'Drill the pin holes',
      'Flatten the back',
      'Cut pocket',
      'Turn over, front up',
      'Flatten the front',
      'Flood coat over the front',
      'Wait',
      'Cut line',
      'Fill with inlay',
      'Wait',
      'Cut scale',
      'Fill scale',
      'Wait',
      'Sand the front',
      'Cut rim',
      'Work the edges',
      'Coat both faces',
      'Wait',
      'Fit works',
      'Deliver'
    ])
    expect(orderOfDocument(rich()).faults).toEqual([])
  })

  it('of a piece cast with its front down works the front first', () => {
    const { steps, faults } = orderOfDocument(rich({ down: 'front' }))
    const turns = steps.filter(s => s.kind === 'turn over').map(s => s.says)
    expect(turns).toEqual(['Turn over, front up', 'Turn over, back up'])
    expect(faults).toEqual([])
  })

  it('does not turn the piece over for a face that needs no work', () => {
    const up: PieceDocument = plainPiece({
      flatten: { back: 0, front: 1 },
      cuts: [{ id: 'bore', face: 'front', shape: { circle: 20 }, depth: 5 }]
    })
    const front = orderOfDocument(up)
    expect(front.steps.some(s => s.kind === 'turn over')).toBe(false)
    expect(front.steps.some(s => s.kind === 'drill pins')).toBe(true)
    expect(front.faults).toEqual([])
    const back = orderOfDocument(plainPiece({ flatten: { back: 1, front: 0 } }))
    expect(back.steps.filter(s => s.kind === 'turn over')).toHaveLength(1)
    expect(back.faults).toEqual([])
  })

  it('knows which face is up and whether it lies in the mould', () => {
    const { steps } = orderOfDocument(rich())
    const at = (words: string) => steps.find(s => s.says === words)!
    expect(at('Prepare slab')).toMatchObject({ up: null, inMould: false })
    expect(at('Seal with seal')).toMatchObject({ up: null, inMould: false })
    expect(at('Pour low')).toMatchObject({ up: 'front', inMould: true })
    expect(at('Take it out of the mould')).toMatchObject({ up: 'front', inMould: true })
    expect(at('Cut pocket')).toMatchObject({ up: 'back', inMould: false })
    expect(at('Deliver')).toMatchObject({ up: 'front', inMould: false })
  })

  it('seals right before the timber is set, with the mould made and dry by then', () => {
    const kinds = orderOfDocument(rich()).steps.map(s => s.pour?.value.kind ?? s.kind)
    expect(kinds.slice(0, 6)).toEqual(['make mould', 'prepare timber', 'seal', 'set timber', 'wait', 'cast'])
    // Without timber the first pour follows the seal.
    const none = orderOfDocument(rich({ timbers: [] })).steps.map(s => s.pour?.value.kind ?? s.kind)
    expect(none.slice(0, 4)).toEqual(['make mould', 'seal', 'wait', 'cast'])
  })

  it('trims to the outline after the cuts of both faces, before the last sanding, edges and coats', () => {
    const document = rich({ cuts: rich().cuts!.slice(0, 2) })
    const { steps, faults } = orderOfDocument(document, true)
    expect(faults).toEqual([])
    const trim = steps.findIndex(s => s.kind === 'trim')
    expect(steps[trim]!.says).toBe('Trim to the outline')
    const before = steps.slice(0, trim).map(s => s.kind)
    const after = steps.slice(trim + 1).map(s => s.kind)
    expect(after).toEqual(['sand', 'work edges', 'coat', 'wait', 'fit', 'deliver'])
    for (const kind of ['cut', 'mark', 'fill', 'flatten']) expect(before).toContain(kind)
    expect(orderOfDocument(document, false).steps.some(s => s.kind === 'trim')).toBe(false)
    // Nothing else is done to either face: it is trimmed all the same.
    const bare = orderOfDocument(plainPiece({ flatten: { back: 0, front: 0 } }), true)
    expect(bare.steps.map(s => s.kind).slice(-2)).toEqual(['trim', 'deliver'])
  })

  it('forces no trimming on an order of the document', () => {
    const document = plainPiece({
      steps: [{ do: 'make mould' }, { do: 'pour', what: 'pour 1' }, { do: 'demould' }, { do: 'deliver' }]
    })
    const { steps, faults } = orderOfDocument(document, true)
    expect(steps.some(s => s.kind === 'trim')).toBe(false)
    expect(faults).toEqual([])
  })

  it('takes all of the allowance off a face, sanding after filled lines included', () => {
    const off = (document: PieceDocument, face: 'front' | 'back') =>
      orderOfDocument(document)
        .steps.filter(s => s.face === face && s.byMm !== undefined)
        .map(s => [s.kind, s.byMm])
    expect(off(rich(), 'front')).toEqual([
      ['flatten', 1.5 - SANDED_AFTER_FILL_MM],
      ['sand', SANDED_AFTER_FILL_MM]
    ])
    expect(off(rich(), 'back')).toEqual([['flatten', 1]])
    // A line that is not filled but sanded after counts as well.
    const sanded = rich({
      markings: [{ sandedAfter: 0.5, linear: { from: [-50, 40], to: [50, 40], length: 6, at: [0, 1] } }]
    })
    expect(off(sanded, 'front')).toEqual([
      ['flatten', 1],
      ['sand', 0.5]
    ])
    // Sanding never takes more than the allowance.
    expect(off(rich({ flatten: { back: 1, front: 0.2 } }), 'front')).toEqual([['sand', 0.2]])
  })

  it('puts an inlay on the face its cut is in', () => {
    const document = rich({
      cuts: [
        { id: 'line', face: 'back', shape: { circle: 30 }, depth: 3 },
        { id: 'pocket', face: 'back', shape: { circle: 40, at: [60, 0] }, depth: 8 }
      ]
    })
    const words = says(document)
    expect(words.indexOf('Fill with inlay')).toBeGreaterThan(words.indexOf('Cut line'))
    expect(words.indexOf('Fill with inlay')).toBeLessThan(words.indexOf('Turn over, front up'))
    expect(orderOfDocument(document).faults).toEqual([])
  })
})

describe('an order of the document', () => {
  const steps: NonNullable<PieceDocument['steps']> = [
    { do: 'make mould' },
    { do: 'set timber' },
    { do: 'pour', what: 'low' },
    { do: 'wait', for: '24 h' },
    { do: 'pour', what: 'high' },
    { do: 'demould', at: '2026-03-02T09:00+01:00' },
    { do: 'flatten', face: 'front' },
    { do: 'mark', what: 'scale' },
    { do: 'fill', what: 'scale' },
    { do: 'sand', face: 'front' },
    { do: 'turn over' },
    { do: 'flatten', face: 'back', by: 0.8 },
    { do: 'coat', face: 'both' },
    { do: 'deliver' }
  ]
  const document = rich({
    steps,
    pours: rich().pours.slice(1, 3),
    cuts: [],
    hardware: []
  })

  it('is followed step by step', () => {
    const order = orderOfDocument(document)
    expect(order.steps.map(s => s.kind)).toEqual(steps.map(s => s.do))
    expect(order.steps.map(s => s.at)).toEqual(steps.map((_, i) => `/steps/${i}`))
    expect(order.steps[3]!.waitMin).toBe(24 * 60)
    expect(order.steps[5]!.begins).toBe('2026-03-02T09:00+01:00')
    expect(order.steps.map(s => s.up).slice(-4)).toEqual(['front', 'back', 'back', 'back'])
    expect(order.faults).toEqual([])
  })

  it('splits the allowance between flattening and sanding as the usual order does', () => {
    const by = orderOfDocument(document).steps.map(s => s.byMm)
    expect([by[6], by[9], by[11]]).toEqual([1.5 - SANDED_AFTER_FILL_MM, SANDED_AFTER_FILL_MM, 0.8])
  })

  it('flattens by the whole allowance where nothing is sanded later', () => {
    const { steps: order } = orderOfDocument({ ...document, steps: steps.filter(s => s.do !== 'sand') })
    expect(order.find(s => s.kind === 'flatten')!.byMm).toBe(1.5)
  })
})

describe('the usual order of boards that are not cast', () => {
  const boards = plainPiece({
    flatten: { back: 0.5, front: 0.8 },
    timbers: [{ id: 'board', species: 'maple-sugar', outline: { rectangle: [300, 200] }, thickness: 24 }],
    pours: [{ id: 'inlay', resin: 'medium', kind: 'inlay', into: ['line'], fill: 'cut' }],
    cuts: [
      { id: 'line', face: 'front', shape: { circle: 30 }, depth: 8 },
      { id: 'pocket', face: 'back', shape: { circle: 40 }, depth: 4 }
    ],
    finish: { both: { coat: 'hardwax-oil' } }
  })

  it('has no mould and no wait before the first cut, and begins with the face that is up', () => {
    const { steps, faults } = orderOfDocument(boards)
    expect(faults).toEqual([])
    expect(steps.map(s => s.says)).toEqual([
      'Prepare board',
      'Drill the pin holes',
      'Flatten the front',
      'Cut line',
      'Fill with inlay',
      'Wait',
      'Sand the front',
      'Turn over, back up',
      'Flatten the back',
      'Cut pocket',
      'Coat both faces',
      'Wait',
      'Deliver'
    ])
    expect(steps.map(s => s.up)).toEqual([null, ...Array(7).fill('front'), ...Array(5).fill('back')])
    expect(steps.every(s => !s.inMould)).toBe(true)
  })

  it('stays free to be given with a mould, or with timber neither prepared nor set', () => {
    const given = (steps: StepDocuments) => orderOfDocument({ ...boards, steps }).faults
    const work: StepDocuments = [
      { do: 'cut', what: 'line' },
      { do: 'pour', what: 'inlay' },
      { do: 'turn over' },
      { do: 'cut', what: 'pocket' },
      { do: 'deliver' }
    ]
    expect(given(work)).toEqual([])
    expect(given([{ do: 'make mould' }, { do: 'set timber' }, { do: 'demould' }, ...work])).toEqual([])
    expect(given([{ do: 'set timber' }, ...work])).toEqual(['1: there is no mould to set it in'])
    expect(given([{ do: 'demould' }, ...work])).toEqual(['1: there is no mould to take it out of'])
  })
})

describe('what the cutter takes off a face', () => {
  it('is the allowance less the sanding', () => {
    const piece = checkPiece(rich(), 'test').value
    expect(flattenBy(piece, 'front')).toBeCloseTo(1.2, 12)
    expect(flattenBy(piece, 'back')).toBe(1)
  })
})
