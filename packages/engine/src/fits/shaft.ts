import type { HardwareRecord } from '../catalogue/hardware-record.ts'
import type { Hardware } from '../piece/piece-schema.ts'
import { coreAt } from '../stack/core.ts'
import type { Stack } from '../stack/stack.ts'
import { errorMm } from './cause.ts'
import type { FitFacts, SizeChain } from './chain.ts'

/** A shaft or thread against what is really left in front of it, mm. */
export interface ShaftFit {
  readonly passesMm: number
  /** Coats on the face it comes out of and on the floor its body lies on, mm. */
  readonly filmMm: number
  /** How much more there may be to pass: thicker coats, a pocket cut less deep, mm. */
  readonly doubtMm: number
  readonly needsMm: number
  readonly hasMm: number
  readonly stock: readonly number[]
}

/** Thread beyond the dial for washer and nut, mm, when the row does not say: 1/8 in (common practice). */
const BEYOND_DIAL_MM = 25.4 / 8

/** What the shaft of a part passes; null for parts without one. */
export function shaftOf(
  stack: Stack,
  facts: FitFacts,
  chain: SizeChain | null,
  h: Hardware,
  record: HardwareRecord,
  x: number,
  y: number,
  own: number | null
): ShaftFit | null {
  if (record.shaft === null && h.thread === undefined) return null
  // A wood screw has neither washer nor nut before it.
  if (record.kind === 'screw' && record.thread === null) return null
  // What the thread passes: the solid round its hole, beyond the floor of its own pocket.
  const around = Math.max(8, (record.thread?.majorMm ?? 8) * 1.2)
  const floor = own === null ? null : stack.cuts[own]!.floor
  let passes = 0
  for (let k = 0; k < 8; k++) {
    const core = coreAt(
      stack.geometry,
      stack.events,
      x + around * Math.cos((k * Math.PI) / 4),
      y + around * Math.sin((k * Math.PI) / 4)
    )
    const low = own === null || stack.cuts[own]!.side === 'low'
    const beyond = core.reduce(
      (sum, p) =>
        sum +
        (floor === null || !Number.isFinite(floor)
          ? p.to - p.from
          : Math.max(0, low ? p.to - Math.max(p.from, floor) : Math.min(p.to, floor) - p.from)),
      0
    )
    passes = Math.max(passes, beyond)
  }
  const stock = (record.shaft?.lengths ?? []).map(l => l.threadMm[0])
  const { filmMm, doubtMm } = coatsPassed(stack, facts, chain, h, own)
  const needs = passes + filmMm + (record.shaft?.beyondDialMm[0] ?? BEYOND_DIAL_MM)
  const has = h.thread ?? stock.find(t => t >= needs + doubtMm) ?? Math.max(0, ...stock)
  return { passesMm: passes, filmMm, doubtMm, needsMm: needs, hasMm: has, stock }
}

// Its own face's coat lies on the floor it is pressed against, unless that is masked; the other face's where it
// comes out.
function coatsPassed(
  stack: Stack,
  { films, shop }: FitFacts,
  chain: SizeChain | null,
  h: Hardware,
  own: number | null
): { readonly filmMm: number; readonly doubtMm: number } {
  const cut = own === null ? undefined : stack.piece.cuts[own]!
  const face = cut?.face ?? h.face
  const coated = (f: 'front' | 'back') =>
    stack.steps.some(s => s.kind === 'coat' && (s.face === 'both' || s.face === f))
  const out = face === 'back' ? 'front' : 'back'
  const on = [
    ...(coated(out) && !films[out].floods ? [films[out].filmMm] : []),
    ...((chain === null ? coated(face) : chain.coats > 0) && !films[face].floods ? [films[face].filmMm] : [])
  ]
  const filmMm = on.reduce((sum, f) => sum + f[1], 0)
  const more = on.reduce((sum, f) => sum + f[2] - f[1], 0)
  return { filmMm, doubtMm: Math.hypot(more, cut === undefined ? 0 : errorMm(shop, cut.way)) }
}
