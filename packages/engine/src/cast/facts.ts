import type { BoardRecord } from '../catalogue/board.ts'
import type { RoomRecord } from '../catalogue/climate.ts'
import type { CoatRecord } from '../catalogue/coat.ts'
import type { CatalogueKind, RowOf } from '../catalogue/find.ts'
import { find, nearestIds } from '../catalogue/find.ts'
import type { HardwareRecord } from '../catalogue/hardware-record.ts'
import type { LinerRecord } from '../catalogue/liner.ts'
import type { PigmentRecord } from '../catalogue/pigment.ts'
import type { StoneRecord } from '../catalogue/stone.ts'
import type { TimberRecord } from '../catalogue/timber-record.ts'
import type { Piece } from '../piece/piece-schema.ts'
import type { Problem } from '../piece/problem.ts'
import { InputProblem } from '../piece/problem.ts'
import type { ResinChoice } from '../piece/resin-choice.ts'
import { chooseResin } from '../piece/resin-choice.ts'
import type { Shop } from '../piece/shop-schema.ts'
import { levelFall } from '../resin/shrinkage.ts'
import type { PourFacts } from '../stack/stack.ts'
import { ownPigments } from './own-pigment.ts'
import { ownResin } from './own-resin.ts'

/** A pigment of a pour with its share of the mix. */
export interface TintPigment {
  readonly pigment: PigmentRecord
  /** Share of the mix by mass, 0..1. */
  readonly share: number
}

/** Every word of a piece that means a row of a catalogue or of the shop, looked up. Lists run with the piece's. */
export interface Materials {
  readonly timbers: readonly TimberRecord[]
  /** By cut: what the plug of an inlay is made of; null where it is not said. */
  readonly plugTimbers: readonly (TimberRecord | null)[]
  readonly resins: readonly ResinChoice[]
  readonly markingResins: readonly ResinChoice[]
  readonly tints: readonly (readonly TintPigment[])[]
  /** Per pour, of each colour of a marbled one; empty for others. */
  readonly marblingTints: readonly (readonly (readonly TintPigment[])[])[]
  readonly markingTints: readonly (readonly TintPigment[])[]
  readonly stones: readonly (readonly StoneRecord[])[]
  readonly hardware: readonly HardwareRecord[]
  readonly coats: { readonly front: CoatRecord | null; readonly back: CoatRecord | null }
  readonly base: BoardRecord
  readonly walls: BoardRecord
  readonly liner: LinerRecord
  /** null when the piece gives its own air. */
  readonly room: RoomRecord | null
}

/** Looks everything up and says all that is unknown at once. @throws InputProblem */
export function materialsOf(piece: Piece, shop: Shop, source: string): Materials {
  const problems: Problem[] = []
  const own = ownPigments(shop)
  const row = <K extends CatalogueKind>(kind: K, word: string, path: string, what: string): RowOf<K> => {
    const found = find(kind, word)
    if (found) return found
    const near = nearestIds(kind, word, 4)
    problems.push({
      path,
      found: `${what} "${word}", which the catalogue does not have`,
      allowed: `an id or a name of the catalogue; nearest: ${near.join(', ')}`,
      example: `"${near[0]}"`
    })
    return find(kind, near[0]!)!
  }
  const resin = (word: string, path: string): ResinChoice => {
    const found = chooseResin(word, shop, path)
    if (!('found' in found)) return ownResin(found)
    problems.push(found)
    return chooseResin('medium', shop, path) as ResinChoice
  }
  const tint = (parts: Piece['pours'][number]['tint'], at: string) =>
    parts.map(
      (t, j): TintPigment => ({
        pigment: own(row('pigment', t.pigment, `${at}/${j}/pigment`, 'a pigment')),
        share: t.percent / 100
      })
    )
  const coat = (face: 'front' | 'back'): CoatRecord | null => {
    const own = piece.finish[face]
    const finish = own ?? piece.finish.both
    return finish === undefined || finish.coat === 'none'
      ? null
      : row('coat', finish.coat, `/finish/${own ? face : 'both'}/coat`, 'a coat')
  }
  const materials: Materials = {
    timbers: piece.timbers.map((t, i) => row('timber', t.species, `/timbers/${i}/species`, 'a timber')),
    plugTimbers: piece.cuts.map((c, i) =>
      c.plug?.species === undefined
        ? null
        : row('timber', c.plug.species, `/cuts/${i}/plug/species`, 'a timber')
    ),
    resins: piece.pours.map((p, i) => resin(p.resin, `/pours/${i}/resin`)),
    markingResins: piece.markings.map((m, i) => resin(m.resin, `/markings/${i}/resin`)),
    tints: piece.pours.map((p, i) => tint(p.tint, `/pours/${i}/tint`)),
    marblingTints: piece.pours.map((p, i) =>
      (p.marbling ?? []).map((m, j) => tint(m.tint, `/pours/${i}/marbling/${j}/tint`))
    ),
    markingTints: piece.markings.map((m, i) => tint(m.filled ?? [], `/markings/${i}/filled`)),
    stones: piece.pours.map((p, i) =>
      p.stones.map((s, j) => row('stone', s.kind, `/pours/${i}/stones/${j}/kind`, 'stones'))
    ),
    hardware: piece.hardware.map((h, i) => row('hardware', h.kind, `/hardware/${i}/kind`, 'hardware')),
    coats: { front: coat('front'), back: coat('back') },
    base: row('board', piece.mould.base, '/mould/base', 'a board'),
    walls: row(
      'board',
      piece.mould.wallBoard ?? piece.mould.base,
      piece.mould.wallBoard ? '/mould/wallBoard' : '/mould/base',
      'a board'
    ),
    liner: row('liner', piece.mould.liner, '/mould/liner', 'a liner'),
    room: typeof piece.climate === 'string' ? row('room', piece.climate, '/climate', 'a room') : null
  }
  piece.pours.forEach((p, i) => {
    const total = p.tint.reduce((sum, t) => sum + t.percent, 0)
    if (total > 30)
      problems.push({
        path: `/pours/${i}/tint`,
        found: `${total} % of pigments together`,
        allowed: 'at most 30 % of the mix',
        example: '[{ "pigment": "white-paste", "percent": 3 }]'
      })
  })
  if (problems.length > 0) throw new InputProblem(source, once(problems))
  return materials
}

// A word that stands for both faces, or for base and walls, is looked up twice and said once.
function once(problems: readonly Problem[]): Problem[] {
  return problems.filter((p, i) => problems.findIndex(q => q.path === p.path && q.found === p.found) === i)
}

/** What the stack needs of each pour. */
export function factsOf(piece: Piece, materials: Materials): PourFacts[] {
  return piece.pours.map((pour, i): PourFacts => {
    const choice = materials.resins[i]!
    const shrinkage = (pour.shrinkage ?? choice.shrinkagePct) / 100
    const gel = choice.record.model?.kinetics.gelConversion ?? UNPREDICTED_GEL
    return {
      densityGMl: choice.densityGMl,
      levelFall: levelFall(shrinkage, gel),
      stonesFill: pour.stones.map((s, j) => s.fill ?? middle(materials.stones[i]![j]!.packing))
    }
  })
}

/** Conversion at gel taken for families without a model: the middle of 0.5 to 0.6 of the classes. */
const UNPREDICTED_GEL = 0.55

function middle([low, high]: readonly [number, number]): number {
  return (low + high) / 2
}
