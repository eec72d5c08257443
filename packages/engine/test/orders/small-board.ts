import { checkPiece, checkShop } from '../../src/piece/read.ts'
import type { PlanInput } from '../../src/work.ts'
import { chance as chanceOf } from '../stack/random.ts'

/** One step of a small order, as the document writes it, without the turnings over. */
export type Doing = { readonly do: string; readonly face?: string; readonly what?: string }

/**
 * A seeded board without a mould, its order written out in a lawful but haphazard way: faces flattened, a pocket in the
 * front, one or two markings filled, the front sanded, coats. All invented.
 */
export function smallBoard(seed: number): { input: PlanInput; doings: Doing[]; head: object[] } {
  const { span, is: chance } = chanceOf(seed)
  const names = chance(0.5) ? ['upper', 'lower'] : ['upper']
  const marking = (id: string, y: number) => ({
    id,
    face: 'front',
    filled: [{ pigment: 'white-paste', percent: 3 }],
    linear: { from: [-50, y], to: [50, y], length: 6, at: [0, 1] }
  })
  // Small enough for every permutation: a pocket where one marking is filled, a hollow in the back where there is none.
  const pocket = names.length === 1 && chance(0.6)
  const back = !pocket && names.length === 1
  const cut = (id: string, face: string, x: number, depth: number) => ({
    id,
    kind: 'pocket',
    face,
    shape: { circle: 24, at: [x, 0] },
    finishedDepth: depth,
    way: 'router'
  })
  const cuts = [
    ...(pocket ? [cut('pocket', 'front', 0, 6)] : []),
    ...(back ? [cut('hollow', 'back', 40, 5)] : [])
  ]
  const front: Doing[] = [
    { do: 'flatten', face: 'front' },
    ...(pocket ? [{ do: 'cut', what: 'pocket' }] : []),
    ...names.flatMap(what => [
      { do: 'mark', what },
      { do: 'fill', what }
    ])
  ]
  const rear: Doing[] = [{ do: 'flatten', face: 'back' }, ...(back ? [{ do: 'cut', what: 'hollow' }] : [])]
  // The back is put in somewhere, in one go or apart.
  const body = [...front]
  for (const step of rear) body.splice(1 + Math.floor(span(0, body.length - 1)), 0, step)
  const flat = body.findIndex(s => s.do === 'flatten' && s.face === 'back')
  const hollow = body.findIndex(s => s.what === 'hollow')
  if (hollow >= 0 && hollow < flat) [body[flat], body[hollow]] = [body[hollow]!, body[flat]!]
  const doings: Doing[] = [...body, { do: 'sand', face: 'front' }, { do: 'coat', face: 'both' }]
  const head: object[] = [
    { do: 'prepare timber', what: 'board' },
    { do: 'pour', what: 'seal' },
    { do: 'wait', until: 'machine' }
  ]
  const labour = chance(0.5) ? 20 + Math.floor(span(0, 40)) : undefined
  const opens = chance(0.5) ? '17:00-21:00' : '08:00-18:00'
  const week = Object.fromEntries(
    ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'].map(d => [d, d === 'sun' ? [] : [opens]])
  )
  const piece = {
    castwright: 1,
    name: `board ${seed}`,
    outline: { rectangle: [200, 140] },
    flatten: { front: 0.8, back: 0.5 },
    timbers: [
      { id: 'board', species: 'ash-white', outline: { rectangle: [208, 148] }, thickness: 26, moisture: 8 }
    ],
    pours: [{ id: 'seal', resin: 'thin', kind: 'seal', depth: 0.2 }],
    cuts,
    markings: names.map((n, i) => marking(n, i === 0 ? 45 : -45)),
    finish: { both: { coat: 'hardwax-oil', coats: 2, grit: 180 } },
    steps: writtenSlowly(head, doings)
  }
  const shop = { castwright: 1, timeZone: 'Europe/Berlin', hours: week, ...(labour && { rates: { labour } }) }
  return {
    input: {
      piece: checkPiece(piece, 'piece'),
      shop: checkShop(shop, 'shop').value,
      readings: [],
      files: {},
      effort: 'preview'
    },
    doings,
    head
  }
}

const FRONT = new Set(['pocket', 'upper', 'lower'])
export const faceOf = (d: Doing): string | null =>
  d.do === 'coat' ? null : (d.face ?? (FRONT.has(d.what ?? '') ? 'front' : 'back'))

/** Written out by a simple reading of the trade: turned over when need be; fillings side by side wait once. */
export function writtenSlowly(head: readonly object[], doings: readonly Doing[]): object[] {
  const out: object[] = [...head]
  let up = 'front'
  doings.forEach((d, i) => {
    const face = faceOf(d)
    if (face !== null && face !== up) {
      out.push({ do: 'turn over' })
      up = face
    }
    out.push(d)
    if (d.do === 'fill' && doings[i + 1]?.do !== 'fill') out.push({ do: 'wait', until: 'sand' })
    if (d.do === 'coat') out.push({ do: 'wait', until: 'load' })
  })
  return [...out, { do: 'deliver' }]
}
