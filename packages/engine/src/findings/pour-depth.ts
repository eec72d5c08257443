import type { CastInput } from '../cast/bed.ts'
import { bandInput } from '../cast/bed.ts'
import { peakOver } from '../cast/peak.ts'
import type { Operation, Patch } from '../piece/patch.ts'
import { decimals } from '../quantity/format.ts'
import { hottestCorner } from '../resin/bands.ts'
import { greatestDepth } from '../resin/depth.ts'
import type { Found } from './finding.ts'
import { rounded, setQuantity, typedAt } from './fix.ts'
import type { Work } from './work.ts'

/** Least depth that is offered as a fix, mm: a thinner pour does not level by itself (practice). */
const LEAST_OFFERED_MM = 0.5
/** Share of the depth to which the search closes in. */
const SEARCH = 0.004

/** What the cast was made from, for runs of one pour at another depth. */
export function castInputOf(work: Work): CastInput {
  const { stack, speeds, shop, effort, materials } = work
  return { stack, speeds, shop, effort, choices: materials.resins, board: materials.base }
}

/**
 * Greatest depth as cast, mm, at which a pour's peak stays at or below `limitC` to the hot end of its band;
 * 0 when there is none or the pour is not predicted. The pour's own depth when even that does.
 *
 * Where the whole mould was cast, its search has the answer. Else: a deeper pour runs hotter, so there is one edge; it is bracketed by the search of the model alone
 * ({@link greatestDepth}, an even room) and closed in on with the planned bed and hour.
 */
export function depthUnder(work: Work, index: number, limitC: number): number {
  const peak = peakOver(castInputOf(work), work.casts, index)
  const { liquidDepth } = work.stack.pours[index]!
  const edge = work.whole?.edges[index]
  if (edge != null && edge.limitC === limitC)
    return Math.min(liquidDepth, edge.depthMm ?? liquidDepth) * keptOf(work, index)
  if (peak === null || liquidDepth <= 0) return 0
  const under = (mm: number): boolean => peak.under(mm, limitC)
  let low = 0
  let high = liquidDepth
  const guess = evenRoomDepth(work, index, limitC)
  if (guess > 0) {
    for (const share of [0.7, 0.9, 1, 1.1]) {
      const mm = Math.min(liquidDepth, guess * share)
      if (mm <= low || mm >= high) continue
      if (under(mm)) low = mm
      else {
        high = mm
        break
      }
    }
  }
  while (high - low > SEARCH * high && high > LEAST_OFFERED_MM) {
    const middle = (low + high) / 2
    if (under(middle)) low = middle
    else high = middle
  }
  return low * keptOf(work, index)
}

// Depth after cure over depth when poured. Where the mould widens above, as over a timber, the pour at hand
// stands relatively lower when liquid than a shallower one would: the lesser of the two shares is safe.
function keptOf(work: Work, index: number): number {
  const { depth, liquidDepth, filledMl, stonesMl, liquidMl } = work.stack.pours[index]!
  const byVolume = liquidMl > 0 ? (filledMl - stonesMl) / liquidMl : 1
  return Math.min(1, depth / liquidDepth, byVolume)
}

// The edge of the hottest corner in an even room, on the mould's base alone: where the search begins.
function evenRoomDepth(work: Work, index: number, limitC: number): number {
  const { startC } = work.casts[index]!
  const hottest = hottestCorner(bandInput(castInputOf(work), index, [], startC, 1))
  const mostMm = Math.max(1, work.stack.pours[index]!.liquidDepth)
  return greatestDepth(hottest, limitC, { mostMm }).depthMm
}

/**
 * The fix that makes a pour no deeper than `depthMm` as cast, rounded down to a tenth, in the words the
 * document uses: depth and height stay what they are; a mass or a fill becomes a depth. None for next to nothing.
 */
export function setDepth(work: Work, index: number, depthMm: number): Pick<Found, 'fix' | 'fixSays'> {
  const { at, id, value } = work.entries.pours[index]!
  const depth = rounded(depthMm, 'down', 0.1)
  if (depth < LEAST_OFFERED_MM) return {}
  const says = `${id} ${decimals(depth, 1)} mm deep`
  if (value.depth !== undefined)
    return { fix: setQuantity(work.document, `${at}/depth`, 'length', depthMm, 'down'), fixSays: says }
  if (value.height !== undefined) {
    const height = work.stack.pours[index]!.floor + depthMm
    return { fix: setQuantity(work.document, `${at}/height`, 'length', height, 'down'), fixSays: says }
  }
  const key = value.mass !== undefined ? 'mass' : 'fill'
  if (typedAt(work.document, `${at}/${key}`) === undefined) return {}
  const fix: Patch = [
    { op: 'remove', path: `${at}/${key}` },
    { op: 'add', path: `${at}/depth`, value: depth }
  ]
  return { fix, fixSays: says }
}

/** Most pours that are offered as a fix: more is another way of building. */
const MOST_OFFERED_POURS = 8

/**
 * The fix of a pour whose level is meant (a height, or full to the timber): the same resin in several pours no
 * deeper than `mostMm` as cast each, the last one as the document has it. The piece stays as thick as it was drawn.
 * null where that is not what the document means or cannot be said: a depth or a mass, stones or marbled colours
 * that would be buried, an order of steps of the maker's own.
 */
export function splitPour(work: Work, index: number, mostMm: number): Pick<Found, 'fix' | 'fixSays'> | null {
  const { at, id, value } = work.entries.pours[index]!
  const { depth } = work.stack.pours[index]!
  if (value.kind !== 'cast' || (value.height === undefined && value.fill === undefined)) return null
  if (value.stones.length > 0 || value.marbling !== undefined || work.piece.steps !== undefined) return null
  let pours = Math.ceil(depth / mostMm - 1e-9)
  const layer = () => rounded(depth / pours, 'down', 0.1)
  while (pours <= MOST_OFFERED_POURS && depth - (pours - 1) * layer() > mostMm) pours++
  if (pours < 2 || pours > MOST_OFFERED_POURS || layer() < LEAST_OFFERED_MM) return null
  const typed = typedAt(work.document, at) as Record<string, unknown>
  const { height: _height, fill: _fill, start: _start, after: _after, pack: _pack, ...same } = typed
  const fix = Array.from({ length: pours - 1 }, (_, k): Operation => {
    const number = pours - 1 - k
    const named = typed['id'] === undefined ? {} : { id: freeName(work, `${id}, layer ${number}`) }
    return { op: 'add', path: at, value: { ...same, ...named, depth: layer() } }
  })
  return { fix, fixSays: `${id} in ${pours} pours of ${decimals(depth / pours, 1)} mm` }
}

// Names end at 60 characters and take no comma.
function freeName(work: Work, wanted: string): string {
  const base = wanted.replaceAll(',', '').slice(-60).trimStart()
  const taken = new Set(work.entries.pours.map(p => p.id))
  let name = base
  for (let k = 2; taken.has(name); k++) name = `${base.slice(0, 56)} ${k}`
  return name
}
