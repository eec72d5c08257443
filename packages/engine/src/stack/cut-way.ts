import type { CoreInterval } from './core.ts'
import type { Removal, StackEvent } from './event.ts'
import type { Stack } from './stack.ts'

/** What is left under a blind cut at its thinnest, mm, and where. */
export interface CutFloor {
  /** To the next void or the far face; negative: how far the cut comes out there. */
  readonly mm: number
  readonly x: number
  readonly y: number
  /** The cut from the other face whose void comes next, by index; null: the far face. */
  readonly met: number | null
}

/** What a blind cut goes through and where its floor lies: one entry for each sequence of materials. */
export interface CutWay {
  /** Layers it goes through, from its face on; the heights are as cast. */
  readonly passed: readonly CoreInterval[]
  /** The material its floor lies in, or on when `mm` is 0. */
  readonly into: CoreInterval['material']
  /** How far its floor lies past the near side of `into`, mm. */
  readonly mm: number
  /** What lies between its floor and the far face there, `into` first. */
  readonly ahead: readonly CoreInterval['material'][]
  readonly x: number
  readonly y: number
}

/** Heights nearer than this are the same, mm. */
const SAME_MM = 1e-6

/**
 * The events by which one cut is looked at: other cuts right through, and open cuts from the same face, are left
 * out. The first are meant to come out, the second answer for themselves.
 */
export function alone(stack: Stack, own: StackEvent & { kind: 'cut' }): StackEvent[] {
  const filled = new Set(stack.piece.pours.flatMap(p => p.into ?? []))
  return stack.events.filter(e => {
    if (e.kind !== 'cut' || e === own) return true
    if (!Number.isFinite(e.removal.floor)) return false
    return e.removal.side !== own.removal.side || filled.has(stack.entries.cuts[e.index]!.id)
  })
}

/** The floor of a blind cut at one place; `without` is the core there before it is cut. null: right through, or air. */
export function floorAtPlace(
  without: readonly CoreInterval[],
  removal: Removal
): { mm: number; end: number } | null {
  const { floor, side } = removal
  if (!Number.isFinite(floor) || without.length === 0) return null
  const low = side === 'low'
  const inward = low ? without : [...without].reverse()
  let end = low ? inward[0]!.from : inward[0]!.to
  for (const p of inward) {
    if (Math.abs((low ? p.from : p.to) - end) > SAME_MM) break
    end = low ? p.to : p.from
  }
  return { mm: low ? end - floor : floor - end, end }
}

/**
 * The way of a blind cut at one place: `without` is the core there before it is cut, `core` after. null where it
 * takes nothing, or where nothing is left.
 */
export function wayAtPlace(
  without: readonly CoreInterval[],
  core: readonly CoreInterval[],
  removal: Removal,
  x: number,
  y: number
): CutWay | null {
  const { floor, side } = removal
  const low = side === 'low'
  const near = (p: CoreInterval) => (low ? p.from : -p.to)
  const far = (p: CoreInterval) => (low ? p.to : -p.from)
  const at = low ? floor : -floor
  if (!Number.isFinite(at)) return null
  const inward = low ? without : [...without].reverse()
  const first = inward[0]
  if (first === undefined || near(first) >= at - SAME_MM) return null
  const into = inward.find(p => near(p) <= at + SAME_MM && far(p) > at + SAME_MM)
  if (into === undefined) return null
  const ahead = (low ? core : [...core].reverse()).filter(p => far(p) > at + SAME_MM)
  return {
    passed: inward.filter(p => far(p) <= at + SAME_MM),
    into: into.material,
    mm: Math.max(0, at - near(into)),
    ahead: ahead.map(p => p.material),
    x,
    y
  }
}

/** Tells ways of the same materials apart from others. */
export function wayKey(way: CutWay): string {
  const name = (m: CoreInterval['material']) => `${m.kind} ${m.index}`
  return [...way.passed.map(p => name(p.material)), '|', ...way.ahead.map(name)].join(',')
}
