import type { HardwareFit, Part } from '../fits/hardware.ts'
import type { Shape } from '../piece/shape-field.ts'
import { decimals } from '../quantity/format.ts'
import type { Found } from './finding.ts'
import { rounded, setQuantity, setValue } from './fix.ts'
import type { Work } from './work.ts'

/** The hole a part sits in: the shape of a cut or of a former, and where it stands in the document. */
function holeOf(work: Work, hardware: number): { at: string; id: string; shape: Shape } | null {
  const { id, value } = work.entries.hardware[hardware]!
  const cut = work.entries.cuts.find(c => c.id === value.in || c.value.for === id)
  if (cut?.value.shape !== undefined) return { at: `${cut.at}/shape`, id: cut.id, shape: cut.value.shape }
  const former = cut === undefined ? work.entries.formers.find(f => f.id === value.in) : undefined
  return former === undefined ? null : { at: `${former.at}/shape`, id: former.id, shape: former.value.shape }
}

/** What a part sits in, as the piece calls it. */
export function holeName(work: Work, fit: HardwareFit, otherwise: string): string {
  const { chain } = fit
  return (
    holeOf(work, fit.hardware)?.id ?? (chain?.of === 'cut' ? work.entries.cuts[chain.index]!.id : otherwise)
  )
}

/** "60 mm across", "58 × 56 mm". */
export function partWords({ shape, lengthMm, widthMm }: Part): string {
  return shape === 'round'
    ? `${decimals(widthMm, 1)} mm across`
    : `${decimals(lengthMm, 1)} × ${decimals(widthMm, 1)} mm`
}

/**
 * The fix that widens a circle or a rectangle about its middle until a part has `gapMm` on every side. A groove is
 * made wider. None for other shapes.
 *
 * In the frame of the shape: a circle needs 2·(farthest place of the part + gap). A rectangle needs
 * 2·(farthest place along each side + d), d = gap, with corners rounder by r than the part's
 * d = max(gap, r − (r − gap)/√2): the corner of the part stands `gap` from the arc.
 */
export function widen(work: Work, fit: HardwareFit, gapMm: number): Pick<Found, 'fix' | 'fixSays'> {
  const hole = holeOf(work, fit.hardware)
  const { part } = fit
  if (part === null) return {}
  if (hole === null) return widenGroove(work, fit, part, gapMm)
  const { shape } = hole
  if (shape.grow !== undefined && shape.grow !== 0) return {}
  const [cx, cy] = shape.at ?? [0, 0]
  const turn = ((work.entries.hardware[fit.hardware]!.value.turn - (shape.turn ?? 0)) * Math.PI) / 180
  const back = (-(shape.turn ?? 0) * Math.PI) / 180
  const dx = fit.x - cx
  const dy = fit.y - cy
  const u = dx * Math.cos(back) - dy * Math.sin(back)
  const v = dx * Math.sin(back) + dy * Math.cos(back)
  if (shape.circle !== undefined) {
    const reach =
      part.shape === 'round'
        ? Math.hypot(u, v) + part.widthMm / 2
        : Math.max(...corners(part, turn).map(([a, b]) => Math.hypot(u + a, v + b)))
    const diameter = 2 * (reach + gapMm + CHORD_MM)
    return {
      fix: setQuantity(work.document, `${hole.at}/circle`, 'length', diameter, 'up', 0.05),
      fixSays: `${hole.id} ${decimals(rounded(diameter, 'up', 0.05), 2)} mm across`
    }
  }
  if (shape.rectangle === undefined) return {}
  const r = Math.max(0, (shape.corner ?? 0) - part.cornerMm)
  const square = part.shape === 'rectangle'
  // A round part that stands off the middle may come near a round corner too: both sides get the radius' share.
  const d =
    (square || u !== 0 || v !== 0) && r > gapMm ? Math.max(gapMm, r - (r - gapMm) / Math.SQRT2) : gapMm
  const places = square
    ? corners(part, turn)
    : [
        [part.widthMm / 2, part.widthMm / 2],
        [-part.widthMm / 2, -part.widthMm / 2]
      ]
  const half = (k: 0 | 1, off: number) => Math.max(...places.map(p => Math.abs(off + p[k]!))) + d + CHORD_MM
  const width = Math.max(shape.rectangle[0], rounded(2 * half(0, u), 'up', 0.1))
  const height = Math.max(shape.rectangle[1], rounded(2 * half(1, v), 'up', 0.1))
  return {
    fix: setValue(work.document, `${hole.at}/rectangle`, [width, height]),
    fixSays: `${hole.id} ${decimals(width, 1)} × ${decimals(height, 1)} mm`
  }
}

/** How far chords and their tolerance may take a gap down, mm. */
const CHORD_MM = 0.01

function widenGroove(
  work: Work,
  { chain }: HardwareFit,
  part: Part,
  gapMm: number
): Pick<Found, 'fix' | 'fixSays'> {
  if (chain?.measured !== 'width') return {}
  const { at, id } = work.entries.cuts[chain.index]!
  const width = Math.min(part.widthMm, part.lengthMm) + 2 * (gapMm + CHORD_MM)
  return {
    fix: setQuantity(work.document, `${at}/width`, 'length', width, 'up'),
    fixSays: `${id} ${decimals(rounded(width, 'up', 0.1), 1)} wide`
  }
}

/**
 * How far the sides of a rectangle stand off a part in it, mm, as if its corners were sharp: the least of its four
 * sides. null for holes and parts of other shapes.
 */
export function sideGap(work: Work, fit: HardwareFit): number | null {
  const shape = holeOf(work, fit.hardware)?.shape
  const { part } = fit
  if (shape?.rectangle === undefined || part?.shape !== 'rectangle') return null
  const [cx, cy] = shape.at ?? [0, 0]
  const back = (-(shape.turn ?? 0) * Math.PI) / 180
  const turn = ((work.entries.hardware[fit.hardware]!.value.turn - (shape.turn ?? 0)) * Math.PI) / 180
  const [dx, dy] = [fit.x - cx, fit.y - cy]
  const u = dx * Math.cos(back) - dy * Math.sin(back)
  const v = dx * Math.sin(back) + dy * Math.cos(back)
  const grow = shape.grow ?? 0
  const [w, h] = shape.rectangle
  return Math.min(
    ...corners(part, turn).map(([a, b]) =>
      Math.min(w / 2 + grow - Math.abs(u + a), h / 2 + grow - Math.abs(v + b))
    )
  )
}

function corners(part: { widthMm: number; lengthMm: number }, turn: number): [number, number][] {
  const out: [number, number][] = []
  for (const sx of [-1, 1])
    for (const sy of [-1, 1]) {
      const a = (sx * part.lengthMm) / 2
      const b = (sy * part.widthMm) / 2
      out.push([a * Math.cos(turn) - b * Math.sin(turn), a * Math.sin(turn) + b * Math.cos(turn)])
    }
  return out
}
