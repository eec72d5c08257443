import type { Kind } from './kind.ts'
import { newPiece } from './kind.ts'
import type { PieceDocument } from './piece-schema.ts'
import type { ShapeDocument } from './shape-field.ts'

/** What a piece is started from: a kind, its finished size and what it is made of. Lengths mm. */
export interface Started {
  readonly kind: Kind['kind']
  readonly name: string
  readonly sizeMm: readonly [width: number, depth: number]
  readonly thicknessMm: number
  readonly species: string
  readonly resin: string
}

/** What a kind is started from when nothing else is asked for; `round`: its size is one diameter. */
export function usualStart(kind: Kind['kind']): Started & { readonly round: boolean } {
  const piece = newPiece(kind)
  const { width, height, round } = sizeOf(piece.outline)
  return {
    kind,
    name: piece.name,
    sizeMm: [width, height],
    thicknessMm: castOf(piece) - takenOff(piece),
    species: piece.timbers?.[0]?.species ?? '',
    resin: (piece.pours.find(isBody) ?? piece.pours[0]!).resin,
    round
  }
}

// Pours that a maker chooses the resin of when the piece is begun: no seals, no coats.
function isBody({ kind }: PieceDocument['pours'][number]): boolean {
  return kind === undefined || kind === 'cast' || kind === 'inlay'
}

/** How far the timbers of a kind reach over its outline, mm. */
const OVER_MM: Readonly<Record<Kind['kind'], number>> = {
  panel: 3,
  tray: 3,
  tabletop: 5,
  dial: 6,
  boards: 0,
  lamp: 3
}

type Pair = [number, number]

/**
 * A piece of a kind at a size of one's own. Across and along everything is stretched in proportion, but what
 * has a size of its own is not: the waste round the outline, the parts bought in, holes for them, corners. Heights
 * keep what flattening takes off, and layers share what is left as they did.
 * The size of a round kind is its smaller side. Values are rounded to 0.1 mm.
 */
export function startedPiece(started: Started): PieceDocument {
  const piece = newPiece(started.kind)
  const outline = sizeOf(piece.outline)
  const [w, h] = outline.round ? [Math.min(...started.sizeMm), Math.min(...started.sizeMm)] : started.sizeMm
  const grown = OVER_MM[started.kind]
  // A timber reaches over the outline by as much as before, whatever the size of the piece.
  const fx = (w! + 2 * grown) / (outline.width + 2 * grown)
  const fy = (h! + 2 * grown) / (outline.height + 2 * grown)
  const fz = (started.thicknessMm + takenOff(piece)) / castOf(piece)
  const stretched = (s: ShapeDocument): ShapeDocument => stretch(s, fx, fy)
  return {
    ...piece,
    name: started.name,
    outline: {
      ...piece.outline,
      ...(outline.round ? { circle: round(w!) } : { rectangle: [round(w!), round(h!)] as Pair })
    },
    ...(piece.mould === undefined ? {} : { mould: mouldOf(piece.mould, w! - outline.width) }),
    timbers: (piece.timbers ?? []).map(t => ({
      ...t,
      species: started.species,
      outline: stretched(t.outline),
      thickness: round(number(t.thickness, 0) * fz)
    })),
    pours: piece.pours.map(p => ({
      ...p,
      ...(isBody(p) ? { resin: started.resin } : {}),
      ...(p.depth === undefined ? {} : { depth: round(number(p.depth, 0) * fz) })
    })),
    ...(piece.cuts === undefined
      ? {}
      : {
          cuts: piece.cuts.map(c =>
            cutOf(c, fx, fy, started.thicknessMm / (castOf(piece) - takenOff(piece)), piece.outline, [w!, h!])
          )
        }),
    ...(piece.markings === undefined
      ? {}
      : { markings: piece.markings.map(m => markingOf(m, Math.min(fx, fy))) })
  }
}

type CutDocument = NonNullable<PieceDocument['cuts']>[number]
type MarkingDocument = NonNullable<PieceDocument['markings']>[number]

function cutOf(
  c: CutDocument,
  fx: number,
  fy: number,
  fz: number,
  outline: ShapeDocument,
  size: Pair | readonly [number, number]
): CutDocument {
  // A thinner piece is cut less deep, a thicker one no deeper: what goes in is as deep as before.
  const f = Math.min(1, fz)
  const depth = c.finishedDepth === undefined ? {} : { finishedDepth: round(number(c.finishedDepth, 0) * f) }
  const day = c.depth === undefined ? {} : { depth: round(number(c.depth, 0) * f) }
  if (c.along?.points !== undefined)
    return {
      ...c,
      ...depth,
      ...day,
      along: {
        points: c.along.points.map(([x, y]): Pair => [round(number(x, 0) * fx), round(number(y, 0) * fy)])
      }
    }
  if (c.along?.path !== undefined)
    return { ...c, ...depth, ...day, along: { path: stretchedPath(c.along.path, fx, fy) } }
  if (c.shape === undefined || c.for !== undefined) return { ...c, ...depth, ...day }
  // A hollow keeps the width of its rim.
  const rect = c.shape.rectangle
  if (rect !== undefined && outline.rectangle !== undefined && c.shape.at === undefined) {
    const rim = (k: 0 | 1) => number(outline.rectangle![k], 0) - number(rect[k], 0)
    return {
      ...c,
      ...depth,
      ...day,
      shape: {
        ...c.shape,
        rectangle: [round(Math.max(10, size[0]! - rim(0))), round(Math.max(10, size[1]! - rim(1)))]
      }
    }
  }
  return { ...c, ...depth, ...day }
}

function markingOf(m: MarkingDocument, f: number): MarkingDocument {
  if (m.radial !== undefined)
    return { ...m, radial: { ...m.radial, radius: round(number(m.radial.radius, 0) * f) } }
  return m
}

function mouldOf(
  mould: NonNullable<PieceDocument['mould']>,
  by: number
): NonNullable<PieceDocument['mould']> {
  const circle = mould.shape?.circle
  return circle === undefined
    ? mould
    : { ...mould, shape: { ...mould.shape, circle: round(number(circle, 0) + by) } }
}

function takenOff(piece: PieceDocument): number {
  return number(piece.flatten?.back, 1) + number(piece.flatten?.front, 1)
}

function castOf(piece: PieceDocument): number {
  return Math.max(...(piece.timbers ?? []).map(t => number(t.thickness, 0)), 0)
}

function sizeOf(s: ShapeDocument): { width: number; height: number; round: boolean } {
  if (s.circle !== undefined) return { width: number(s.circle, 0), height: number(s.circle, 0), round: true }
  return { width: number(s.rectangle?.[0], 0), height: number(s.rectangle?.[1], 0), round: false }
}

function stretch(s: ShapeDocument, fx: number, fy: number): ShapeDocument {
  const pair = ([x, y]: readonly [number | string, number | string]): Pair => [
    round(number(x, 0) * fx),
    round(number(y, 0) * fy)
  ]
  const all = (list: ShapeDocument[]) => list.map(x => stretch(x, fx, fy))
  return {
    ...s,
    ...(s.circle === undefined ? {} : { circle: round(number(s.circle, 0) * Math.min(fx, fy)) }),
    ...(s.rectangle === undefined ? {} : { rectangle: pair(s.rectangle) }),
    ...(s.polygon === undefined ? {} : { polygon: s.polygon.map(pair) }),
    ...(s.path === undefined ? {} : { path: stretchedPath(s.path, fx, fy) }),
    ...(s.union === undefined ? {} : { union: all(s.union) }),
    ...(s.difference === undefined ? {} : { difference: all(s.difference) }),
    ...(s.common === undefined ? {} : { common: all(s.common) }),
    ...(s.at === undefined ? {} : { at: pair(s.at) })
  }
}

// The paths of the kinds hold M, H, V, C, S, L and Z with absolute places only (a test holds them to it).
function stretchedPath(d: string, fx: number, fy: number): string {
  let command = 'M'
  let turn = 0
  return d.replace(/[A-Z]|-?[0-9]*\.?[0-9]+/g, token => {
    if (/[A-Z]/.test(token)) {
      command = token
      turn = 0
      return token
    }
    const alongX = command === 'H' || (command !== 'V' && turn++ % 2 === 0)
    return String(round(Number(token) * (alongX ? fx : fy)))
  })
}

function number(x: number | string | undefined, otherwise: number): number {
  return typeof x === 'number' ? x : otherwise
}

function round(mm: number): number {
  return Math.round(mm * 10) / 10
}
