import type { Bands } from '../catalogue/pigment-optics.ts'
import { luminanceOf } from '../catalogue/pigment-optics.ts'
import type { Optics } from '../colour/stacked.ts'
import type { Work } from '../findings/work.ts'
import { bounds } from '../shape/measure.ts'
import type { CoreModel, MaterialDrawing } from '../sheets/core-model.ts'
import { finishedThickness } from '../stack/stack.ts'
import { partBodies } from './part-body.ts'
import type { Mesh } from './prism.ts'
import { prismMesh } from './prism.ts'
import { slabsOf } from './slab.ts'
import { stoneBodies } from './stone-body.ts'

/** One body of the finished piece. Heights mm from the finished back. */
export interface RoundBody extends Mesh {
  readonly kind: 'timber' | 'pour' | 'marking' | 'stones' | 'hardware'
  readonly name: string
  readonly words: string
  /** JSON Pointer of its entry. */
  readonly at: string
  readonly fromMm: number
  readonly toMm: number
  /** Its colour by itself, as the sheets draw it; "clear" of resin that tints less than an eye notices. */
  readonly paint: `#${string}` | 'clear'
  /** Loss of light in it per mm by absorption, per band of sRGB, and by scattering (see colour/stacked.ts). */
  readonly absorbPerMm: Bands
  readonly scatterPerMm: number
  /** Whether light goes through it: timber, stones and parts are solid. */
  readonly lets: boolean
  /** Direction of the grain on the plan, degrees from x; null for what has none. */
  readonly grainDeg: number | null
}

/** The finished piece in the round: plain numbers, ready to be posted between threads. */
export interface RoundModel {
  readonly name: string
  /** Box of its outline on the plan, mm, and finished thickness. */
  readonly box: { readonly minX: number; readonly minY: number; readonly maxX: number; readonly maxY: number }
  readonly thicknessMm: number
  readonly bodies: readonly RoundBody[]
  /** Highest step by which sides that lean are followed, mm; 0 when all stand upright. */
  readonly stepMm: number
  /** By how much edges of timbers with a great many points stray besides, mm (see leaning.ts); 0 for most pieces. */
  readonly strayMm: number
}

/** Most points of all meshes: beyond it outlines are thinned further. About 40 bytes a point. */
const MOST_POINTS = 1_500_000
const COARSER = [1, 4, 16, 64] as const

const SOLID = { absorbPerMm: [0, 0, 0] as Bands, scatterPerMm: 0, lets: false } as const

/**
 * The bodies of the finished piece as closed meshes, from the level cuts of its stack.
 *
 * Outlines stray at most 0.03 mm (less for narrow bodies) unless the piece has more than {@link MOST_POINTS}
 * points; sides that lean are followed by steps (see slab.ts).
 */
export function roundModel(work: Work, model: CoreModel): RoundModel {
  const { stack, entries } = work
  const slabs = slabsOf(stack)
  for (const coarser of COARSER) {
    const bodies: RoundBody[] = []
    let points = 0
    const add = (key: string, body: Omit<RoundBody, keyof Mesh | 'fromMm' | 'toMm'>) => {
      const own = slabs.of.get(key)
      if (own === undefined) return
      const mesh = prismMesh(own, coarser)
      points += mesh.positions.length / 3
      if (mesh.indices.length > 0) bodies.push({ ...body, ...mesh, ...heightsOf(mesh) })
    }
    entries.timbers.forEach((t, i) => {
      const { paint, ...words } = wordsOf(model.timbers[i]!)
      add(`timber ${i}`, {
        kind: 'timber',
        at: t.at,
        ...words,
        paint,
        ...SOLID,
        grainDeg: model.grainDeg[i]!
      })
    })
    const resin = ({ scatterPerMm, absorbPerMm }: Optics) => ({
      absorbPerMm,
      scatterPerMm: luminanceOf(scatterPerMm),
      lets: true,
      grainDeg: null
    })
    entries.pours.forEach((p, i) => {
      add(`pour ${i}`, {
        kind: 'pour',
        at: p.at,
        ...wordsOf(model.pours[i]!),
        ...resin(model.looks.pours[i]!)
      })
    })
    entries.markings.forEach((m, i) => {
      add(`marking ${i}`, {
        kind: 'marking',
        at: m.at,
        ...wordsOf(model.markings[i]!),
        ...resin(model.looks.markings[i]!)
      })
    })
    if (points > MOST_POINTS && coarser !== COARSER[COARSER.length - 1]) continue
    for (const solid of [...stoneBodies(work), ...partBodies(work)])
      bodies.push({ ...solid, ...SOLID, ...heightsOf(solid), grainDeg: null })
    return {
      name: work.piece.name,
      box: bounds(stack.geometry.outline),
      thicknessMm: finishedThickness(stack),
      bodies,
      stepMm: slabs.stepMm,
      strayMm: slabs.strayMm
    }
  }
  throw new Error('no thinning is coarse enough')
}

function wordsOf({ name, words, paint }: MaterialDrawing) {
  return { name, words, paint: paint.startsWith('#') ? (paint as `#${string}`) : ('clear' as const) }
}

function heightsOf({ heights }: Pick<Mesh, 'heights'>) {
  let fromMm = Number.POSITIVE_INFINITY
  let toMm = Number.NEGATIVE_INFINITY
  for (const z of heights) {
    fromMm = Math.min(fromMm, z)
    toMm = Math.max(toMm, z)
  }
  return { fromMm, toMm }
}
