import type { Block } from './block.ts'
import { fills, onFace } from './block.ts'

/** Why one step may not come before another. */
export interface Law {
  readonly id: string
  readonly says: string
  readonly basis: string
}

const GEOMETRY = 'geometry: what is worked off or covered is gone'
const PRACTICE = 'common practice, no source'

interface Rule extends Law {
  /** Whether `first` may not come before `then`. */
  readonly forbids: (first: Block, then: Block) => boolean
}

const kind = (b: Block) => b.step.kind
const is = (b: Block, ...kinds: readonly Block['step']['kind'][]) => kinds.includes(b.step.kind)
const outline = (b: Block) => is(b, 'cut') && b.step.cut!.value.kind === 'outline'
const flood = (b: Block) => is(b, 'pour') && b.step.pour!.value.kind === 'flood'
const sameFace = (a: Block, b: Block) => b.face !== null && onFace(a, b.face)
const fillsCut = (a: Block, cut: Block) => a.step.pour?.value.into?.includes(cut.step.cut!.id) ?? false

/** What a step needs to stand before it, in the order in which a maker would name it. */
const RULES: readonly Rule[] = [
  {
    id: 'not cut yet',
    says: 'what is filled has to be cut first',
    basis: GEOMETRY,
    forbids: (a, b) =>
      (is(a, 'fill') && is(b, 'mark') && a.step.marking!.id === b.step.marking!.id) ||
      (is(a, 'pour') && is(b, 'cut') && fillsCut(a, b))
  },
  {
    id: 'coat worked off',
    says: 'flattening or sanding takes the coat off again',
    basis: GEOMETRY,
    forbids: (a, b) => is(a, 'coat') && is(b, 'flatten', 'sand') && sameFace(a, b)
  },
  {
    id: 'coat under filling',
    says: 'resin does not hold on a coat, and scraping it level takes the coat off',
    basis: PRACTICE,
    forbids: (a, b) => is(a, 'coat') && (fills(b.step) || flood(b)) && sameFace(a, b)
  },
  {
    id: 'edges bare',
    says: 'what is cut or worked round the edge after the coat stays bare',
    basis: PRACTICE,
    forbids: (a, b) => is(a, 'coat') && (is(b, 'work edges', 'trim') || outline(b))
  },
  {
    id: 'edge cut off',
    says: 'trimming or flattening takes the worked edge off again',
    basis: GEOMETRY,
    forbids: (a, b) => is(a, 'work edges') && (is(b, 'trim', 'flatten') || outline(b))
  },
  {
    id: 'filling stands proud',
    says: 'what is filled after the sanding stands proud: nothing sands it level',
    basis: GEOMETRY,
    forbids: (a, b) => is(a, 'sand') && fills(b.step) && a.face === b.face
  },
  {
    id: 'cutter marks stay',
    says: 'the marks of the cutter are sanded out after the flattening, not before it',
    basis: PRACTICE,
    forbids: (a, b) => is(a, 'sand') && is(b, 'flatten') && a.face === b.face
  },
  {
    id: 'flood taken off',
    says: 'flattening takes the flood coat off',
    basis: GEOMETRY,
    forbids: (a, b) => flood(a) && is(b, 'flatten') && a.face === b.face
  },
  {
    id: 'face not flat',
    says: 'its depth is from a face that is not flat yet',
    basis: PRACTICE,
    forbids: (a, b) => is(a, 'cut') && !a.filled && is(b, 'flatten') && a.face === b.face
  },
  {
    id: 'waste gone',
    says: 'what stands round the outline holds the piece and its pins: it comes off when the cuts are made',
    basis: PRACTICE,
    forbids: (a, b) => is(a, 'trim') && is(b, 'flatten', 'cut', 'mark', 'drill pins')
  },
  {
    id: 'runs out',
    says: 'it is filled up to the edge: what stands round the outline keeps the resin in',
    basis: GEOMETRY,
    forbids: (a, b) => (is(a, 'trim') || outline(a)) && b.open
  },
  {
    id: 'part freed',
    says: 'cutting the outline frees the part: it comes last on the machine',
    basis: PRACTICE,
    forbids: (a, b) =>
      outline(a) && (is(b, 'flatten', 'mark', 'fill', 'pour', 'drill pins') || (is(b, 'cut') && !outline(b)))
  },
  {
    id: 'not tied',
    says: 'what is cut before the pin holes is tied to nothing when the piece is turned over',
    basis: PRACTICE,
    forbids: (a, b) => is(a, 'flatten', 'cut', 'mark') && is(b, 'drill pins')
  },
  {
    id: 'parts last',
    says: 'parts go in last: dust, resin and coat get into them',
    basis: PRACTICE,
    forbids: (a, b) => is(a, 'fit') && !is(b, 'fit')
  }
]

/** Why `first` may not come before `then`; null: it may. */
export function whyNot(first: Block, then: Block): Law | null {
  return RULES.find(r => r.forbids(first, then)) ?? null
}

/** What is given up by an order that is lawful, in words. */
export function givenUp(order: readonly Block[]): string[] {
  const out: string[] = []
  order.forEach((b, i) => {
    if (!is(b, 'cut', 'mark')) return
    const name = b.step.cut?.id ?? b.step.marking!.id
    const before = order.slice(0, i)
    if (before.some(a => kind(a) === 'coat' && sameFace(a, b)))
      out.push(`the walls of ${name} stay without a coat`)
    else if (!outline(b) && before.some(a => kind(a) === 'sand' && a.face === b.face))
      out.push(`${name} is cut after its face is sanded: its rim is broken by hand`)
    if (order.slice(i + 1).some(a => kind(a) === 'flatten' && a.face === b.face))
      out.push(`${name} is cut before its face is flat`)
  })
  return out
}

/**
 * Whether two steps may change places without changing anything that is reckoned: cuts of one face (programs choose
 * their own order of cutters), parts, and the edges, which need no face up.
 */
export function alike(a: Block, b: Block): boolean {
  if (whyNot(a, b) !== null || whyNot(b, a) !== null) return false
  if (is(a, 'fit') && is(b, 'fit')) return true
  if (is(a, 'work edges') || is(b, 'work edges')) return !is(a, 'coat') && !is(b, 'coat')
  const cuts = (x: Block) => is(x, 'cut', 'mark')
  if (cuts(a) && cuts(b)) return a.face === b.face
  return fills(a.step) && fills(b.step) && a.face === b.face
}
