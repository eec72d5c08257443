import type { PieceDocument } from '../../src/piece/piece-schema.ts'
import type { ShopDocument } from '../../src/piece/shop-schema.ts'
import { chance } from '../stack/random.ts'

/** A piece as another maker would have it, in another shop; `changes` says what was changed. */
export interface Varied {
  readonly piece: PieceDocument
  readonly shop: ShopDocument
  readonly changes: readonly string[]
}

/**
 * An example changed the way makers change one: thicker or thinner timber, another fill, more or less flattened, a
 * board fewer or more, one face left alone, another face down, pins, clamps or tape, a larger or smaller machine,
 * other depths of cuts. Each change is made by chance, so that most meet one another. No cut is shallower than 0.6 mm:
 * at the cells of the sweep its walls are not told from slopes.
 */
export function variedExample(example: PieceDocument, shop: ShopDocument, seed: number): Varied {
  const { span, pick, is, whole } = chance(seed)
  const changes: string[] = []
  const mm = (from: number, to: number, step = 0.1) =>
    Number((Math.round(span(from, to) / step) * step).toFixed(2))
  let piece: PieceDocument = structuredClone(example)
  let ground: ShopDocument = structuredClone(shop)
  const change = (share: number, says: () => string) => {
    if (is(share)) changes.push(says())
  }
  const timbers = () => piece.timbers ?? []
  change(0.5, () => {
    const by = pick([0.5, 0.7, 0.9, 1.1, 1.5, 2])
    const scaled = (n: unknown) => (typeof n === 'number' ? Number((n * by).toFixed(2)) : n)
    const wood = timbers().map(t => ({ ...t, thickness: scaled(t.thickness) as number }))
    piece = { ...piece, timbers: wood }
    return `timber × ${by}`
  })
  change(0.3, () => {
    const by = mm(-4, 4)
    const wood = timbers().map((t, i) => (i > 0 ? t : { ...t, thickness: Number(t.thickness) + by }))
    piece = { ...piece, timbers: wood }
    return `first timber ${by} mm thicker`
  })
  change(0.6, () => {
    const flatten = { back: pick([0, mm(0, 4)]), front: pick([0, mm(0, 4)]) }
    piece = { ...piece, flatten }
    return `flattened ${flatten.back} and ${flatten.front}`
  })
  change(0.5, () => {
    const at = whole(0, piece.pours.length - 1)
    const pour = piece.pours[at]!
    if (pour.kind === 'seal') return 'seal as it was'
    const { depth: _d, height: _h, mass: _m, fill: _f, ...rest } = pour
    const to =
      pour.kind === 'inlay'
        ? pick([{ fill: 'cut' as const }, { depth: mm(1, 14) }, { mass: mm(20, 400, 10) }])
        : pick([{ depth: mm(4, 50) }, { height: mm(16, 70) }, { fill: 'timber' as const }])
    piece = { ...piece, pours: piece.pours.map((p, i) => (i === at ? { ...rest, ...to } : p)) }
    return `pour ${at} ${JSON.stringify(to)}`
  })
  change(0.15, () => {
    piece = { ...piece, timbers: timbers().slice(0, -1) }
    return 'a board fewer'
  })
  change(0.15, () => {
    const last = timbers().at(-1)
    if (last === undefined) return 'no board to lay one on'
    const more = { ...last, id: 'one above', base: Number(last.thickness), thickness: mm(3, 20) }
    piece = { ...piece, timbers: [...timbers(), more] }
    return `a board ${more.thickness} thick above the last`
  })
  change(0.2, () => {
    const face = pick(['front', 'back'] as const)
    const late = piece.pours.filter(p => p.kind !== 'inlay' || face === 'back')
    piece = {
      ...piece,
      cuts: (piece.cuts ?? []).filter(c => (c.face ?? 'front') !== face),
      pours: late.length > 0 ? late : [{ id: 'seal', kind: 'seal', resin: 'thin', depth: 0.3 }],
      markings: (piece.markings ?? []).filter(m => (m.face ?? 'front') !== face),
      hardware: (piece.hardware ?? []).filter(h => (h.face ?? 'front') !== face)
    }
    return `nothing cut on the ${face}`
  })
  change(0.3, () => {
    piece = { ...piece, down: 'front' }
    return 'front down'
  })
  change(0.4, () => {
    const cuts = (piece.cuts ?? []).map(c =>
      typeof c.depth === 'number'
        ? { ...c, depth: mm(0.8, 16) }
        : typeof c.finishedDepth === 'number'
          ? { ...c, finishedDepth: mm(0.8, 16) }
          : c
    )
    piece = { ...piece, cuts }
    return `depths ${cuts.map(c => c.depth ?? c.finishedDepth ?? 'through').join(', ')}`
  })
  change(0.5, () => {
    const by = pick(['screws in the waste', 'pins', 'tape', 'clamps', 'vacuum'] as const)
    piece = { ...piece, holding: { ...piece.holding, by } }
    return `held by ${by}`
  })
  change(0.4, () => {
    const pins = { diameter: pick([4, 6, 8]), depth: mm(5, 40), about: pick(['x', 'y'] as const) }
    piece = { ...piece, pins }
    return `pins about ${pins.about}, ${pins.depth} deep`
  })
  change(0.2, () => {
    const margin = mm(0, 30)
    piece = { ...piece, mould: { ...piece.mould, margin } }
    return `margin ${margin}`
  })
  change(0.3, () => {
    const front = { coat: 'hardwax-oil', coats: 2, grit: 180 }
    piece = { ...piece, edges: [{ face: pick(['front', 'back', 'both']), profile: 'chamfer', size: 2, way: 'machine' }], finish: { both: front } } // biome-ignore format: one change
    return 'chamfered by machine'
  })
  change(0.2, () => {
    piece = {
      ...piece,
      pours: [...piece.pours, { id: 'flood', kind: 'flood', face: pick(['front', 'back']), resin: 'medium', depth: mm(1, 3) }] // biome-ignore format: one pour
    }
    return 'a flood'
  })
  change(0.5, () => {
    const [x, y, z] = pick([[300, 300, 60], [600, 400, 80], [800, 600, 110], [1200, 900, 150]] as const) // biome-ignore format: sizes
    ground = { ...ground, machine: { ...ground.machine!, x, y, z } }
    return `machine ${x} × ${y} × ${z}`
  })
  change(0.3, () => {
    const program = {
      zero: pick(['worked face', 'bed'] as const),
      changes: pick(['one program a cutter', 'in the program'] as const)
    }
    ground = { ...ground, machine: { ...ground.machine!, program: { ...ground.machine!.program, ...program } } } // biome-ignore format: one change
    return `zero ${program.zero}, ${program.changes}`
  })
  return { piece, shop: ground, changes }
}
