import type { PieceDocument } from '../../src/piece/piece-schema.ts'
import type { ShapeDocument } from '../../src/piece/shape-field.ts'

type Length = number | string
type Place = [Length, Length]

/**
 * The same piece turned by quarter turns about the origin, then moved. A measured top keeps its diagonals only
 * over half turns: ask for those alone.
 */
export function turnedPiece(piece: PieceDocument, quarters: number, dx: number, dy: number): PieceDocument {
  const [cos, sin] = [[1, 0, -1, 0][quarters]!, [0, 1, 0, -1][quarters]!]
  const place = ([x, y]: Place): [number, number] => [
    cos * Number(x) - sin * Number(y) + dx,
    sin * Number(x) + cos * Number(y) + dy
  ]
  const shape = (s: ShapeDocument): ShapeDocument => ({ union: [s], turn: 90 * quarters, at: [dx, dy] })
  const some = <T>(key: string, value: T | undefined, change: (value: T) => T) =>
    value === undefined ? {} : { [key]: change(value) }
  return {
    ...piece,
    outline: shape(piece.outline),
    mould: {
      ...piece.mould,
      ...some('shape', piece.mould?.shape, shape),
      ears: (piece.mould?.ears ?? []).map(shape),
      formers: (piece.mould?.formers ?? []).map(f => ({ ...f, shape: shape(f.shape) }))
    },
    timbers: (piece.timbers ?? []).map(t => ({
      ...t,
      outline: shape(t.outline),
      ...some('underside', t.underside, shape),
      ...(t.crown === undefined
        ? {}
        : { crown: { ...t.crown, along: ((t.crown.along ?? 0) + 90 * quarters) % 360 } }),
      ...some('measured', t.measured, m => turnedGrid(m, quarters, place))
    })),
    pours: piece.pours.map(p => ({
      ...p,
      ...some('region', p.region, shape),
      ...some('stones', p.stones, stones =>
        stones.map(s => ({
          ...s,
          ...some('zone', s.zone, shape),
          ...some('placed', s.placed, list => list.map(one => ({ ...one, at: place(one.at) })))
        }))
      )
    })),
    cuts: (piece.cuts ?? []).map(c => ({
      ...c,
      ...some('shape', c.shape, shape),
      ...some('along', c.along, along => ({ points: along.points!.map(place) }))
    })),
    markings: (piece.markings ?? []).map(m => ({
      ...m,
      ...some('radial', m.radial, r => ({
        ...r,
        centre: place(r.centre ?? [0, 0]),
        at: r.at.map(deg => deg + 90 * quarters)
      })),
      ...some('linear', m.linear, l => ({ ...l, from: place(l.from), to: place(l.to) })),
      ...some('lines', m.lines, lines => lines.map(line => line.map(place)))
    }))
  }
}

type Grid = NonNullable<NonNullable<PieceDocument['timbers']>[number]['measured']>

function turnedGrid(m: Grid, quarters: number, place: (p: Place) => [number, number]): Grid {
  if (quarters === 0) return { ...m, from: place(m.from) }
  if (quarters !== 2) throw new Error('a measured top keeps its diagonals only over half turns')
  const columns = m.rises[0]!.length
  const far: Place = [
    Number(m.from[0]) + (columns - 1) * Number(m.step[0]),
    Number(m.from[1]) + (m.rises.length - 1) * Number(m.step[1])
  ]
  return { ...m, from: place(far), rises: m.rises.map(row => [...row].reverse()).reverse() }
}
