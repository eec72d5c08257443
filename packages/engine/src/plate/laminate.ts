import { inRange } from '../quantity/range.ts'
import { solved } from './linear.ts'
import type { Plane, Stiffness } from './ply.ts'

/**
 * A stack of bonded plies as one plate: its stiffness, the shape it takes, the stress in it.
 *
 *   ε(z) = ε0 + z·κ                                  plane sections stay plane; κ = −∂²w
 *   A = Σ Q̄·(h − l)    B = Σ Q̄·(h² − l²)/2    D = Σ Q̄·(h³ − l³)/3
 *   [A B; B D]·[ε0; κ] = [N*; M*]                     no force and no moment from outside
 *   N* = Σ ∫ Q̄·e dz    M* = Σ ∫ Q̄·e·z dz            e: the strain at which the ply would be without stress
 *   held flat: κ = 0 and A·ε0 = N*
 *   σ = Q̄·(ε0 + z·κ − e)
 *
 *   l, h  heights of the lower and upper face of a ply, mm, from any one plane; z upward
 *   e     free strain since it joined, and the plate's own strain and curvature at the moment it joined: what
 *         is cast against a plate that is bent or strained already is without stress as it lies there
 *   w     upward; κ > 0: the middle stands up, the lower face is hollow
 *
 * A ply that is planed off is left out or made thinner: what it pulled comes free.
 *
 * Source: theory of laminated plates (textbook: Jones; Kaw). Check: Timoshenko's two bonded strips (timber/cup);
 * [0/30/−45] of graphite and epoxy, A, B and D (Kaw, example 4.2; memory); a layered cross-section in finite
 * elements (test).
 *
 * Limits: **elastic**. Timber and resin creep, warm or damp ones within days, so what is locked in shrinks with
 * time: the elastic answer is the upper end. Plates alike all over their plan; plies that take a share
 * of the width are mixed by it (rule of mixtures, all stretched and bent alike). Small deflections: while the
 * bow is under half the thickness the two directions do not stiffen each other. Corners and edges are freer
 * than this over about one thickness.
 */

/** What a plate does: strain of the plane z = 0 and curvature, 1/mm, in its axes. */
export interface Shape {
  readonly strain: Plane
  readonly curvature: Plane
}

export interface Layer {
  /** Heights of its faces, mm; high at or above low. */
  readonly lowMm: number
  readonly highMm: number
  readonly stiffness: Stiffness
  /** Free strain since it joined, in the axes of the plate. */
  readonly free: Plane
  /** The plate's shape when it joined; left out: flat and unstrained. */
  readonly joined?: Shape
  /** Share of the plate's width it takes, 0..1; left out: all of it. */
  readonly share?: number
}

/** Sums over a stack: stretching A, coupling B, bending D (11, 12, 16, 22, 26, 66), free force and moment; N and mm. */
export interface Laminate {
  readonly a: readonly number[]
  readonly b: readonly number[]
  readonly d: readonly number[]
  readonly force: readonly number[]
  readonly moment: readonly number[]
}

export const FLAT: Shape = { strain: [0, 0, 0], curvature: [0, 0, 0] }

/**
 * Sums of a stack of plies; gaps between them are air and carry nothing. Plies with a `share` lie side by side with
 * others, and all stretch and bend alike.
 * @throws RangeError for a ply upside down, or a share outside 0..1
 */
export function laminate(layers: readonly Layer[]): Laminate {
  const a = [0, 0, 0, 0, 0, 0]
  const b = [0, 0, 0, 0, 0, 0]
  const d = [0, 0, 0, 0, 0, 0]
  const force = [0, 0, 0]
  const moment = [0, 0, 0]
  for (const { lowMm, highMm, stiffness, free, joined = FLAT, share = 1 } of layers) {
    inRange('upper face of a ply', highMm, lowMm, lowMm + 10_000, 'mm')
    inRange('share of the width', share, 0, 1, '')
    const t = share * (highMm - lowMm)
    const t2 = (share * (highMm * highMm - lowMm * lowMm)) / 2
    const t3 = (share * (highMm ** 3 - lowMm ** 3)) / 3
    for (let k = 0; k < 6; k++) {
      const q = stiffness[k]!
      a[k]! += q * t
      b[k]! += q * t2
      d[k]! += q * t3
    }
    for (let k = 0; k < 3; k++) {
      const e = free[k]! + joined.strain[k]!
      const c = joined.curvature[k]!
      const [n, m] = [e * t + c * t2, e * t2 + c * t3]
      for (let i = 0; i < 3; i++) {
        const q = stiffness[ROW[3 * i + k]!]!
        force[i]! += q * n
        moment[i]! += q * m
      }
    }
  }
  return { a, b, d, force, moment }
}

// Where an entry of the symmetric 3 × 3 stiffness stands among its six.
const ROW = [0, 1, 2, 1, 3, 4, 2, 4, 5] as const

/** The shape a plate takes when it lies free, or when it is held flat and only slides. */
export function shapeOf(plate: Laminate, held: 'free' | 'flat' = 'free'): Shape {
  const { a, b, d, force, moment } = plate
  if (held === 'flat') {
    const strain = solved(
      ROW.map(k => a[k]!),
      force
    )
    return { strain: strain as unknown as Plane, curvature: [0, 0, 0] }
  }
  const m = new Array<number>(36)
  for (let i = 0; i < 3; i++) {
    for (let k = 0; k < 3; k++) {
      const at = ROW[3 * i + k]!
      m[6 * i + k] = a[at]!
      m[6 * i + 3 + k] = b[at]!
      m[6 * (i + 3) + k] = b[at]!
      m[6 * (i + 3) + 3 + k] = d[at]!
    }
  }
  const x = solved(m, [...force, ...moment])
  return { strain: [x[0]!, x[1]!, x[2]!], curvature: [x[3]!, x[4]!, x[5]!] }
}

/** Stress in a ply at height z, MPa, in the axes of the plate. A bound while nothing creeps; no claim of strength. */
export function stressMPa(layer: Layer, shape: Shape, zMm: number): Plane {
  const { stiffness, free, joined = FLAT } = layer
  const e = [0, 1, 2].map(
    k =>
      shape.strain[k]! + zMm * shape.curvature[k]! - free[k]! - joined.strain[k]! - zMm * joined.curvature[k]!
  )
  const row = (i: number) => e.reduce((sum, x, k) => sum + stiffness[ROW[3 * i + k]!]! * x, 0)
  return [row(0), row(1), row(2)]
}

/**
 * Bending stiffness D − B·A⁻¹·B along x and along y, N·mm: about the plane that bending does not stretch, the
 * other direction free to bend as it likes; an orthotropic plate so counted is a beam of width one.
 */
export function bendingNmm(plate: Laminate): readonly [alongX: number, alongY: number] {
  const of = (k: number): number => {
    // A unit moment about one axis, nothing else: the curvature it makes is 1 over the stiffness.
    const moment = [0, 0, 0]
    moment[k] = 1
    return 1 / shapeOf({ ...plate, force: [0, 0, 0], moment }).curvature[k]!
  }
  return [of(0), of(1)]
}
