import { inRange } from '../quantity/range.ts'

/**
 * Stiffness of one ply in its plane: orthotropic, in plane stress, turned into the axes of the plate.
 *
 *   Q11 = E1/(1 − ν12·ν21)    Q22 = E2/(1 − ν12·ν21)    Q12 = ν12·Q22    Q66 = G12    ν21 = ν12·E2/E1
 *   turned by θ, c = cos θ, s = sin θ:
 *   Q̄11 = Q11·c⁴ + 2(Q12 + 2Q66)·s²c² + Q22·s⁴
 *   Q̄12 = (Q11 + Q22 − 4Q66)·s²c² + Q12·(s⁴ + c⁴)
 *   Q̄22 = Q11·s⁴ + 2(Q12 + 2Q66)·s²c² + Q22·c⁴
 *   Q̄16 = (Q11 − Q12 − 2Q66)·s·c³ + (Q12 − Q22 + 2Q66)·s³·c
 *   Q̄26 = (Q11 − Q12 − 2Q66)·s³·c + (Q12 − Q22 + 2Q66)·s·c³
 *   Q̄66 = (Q11 + Q22 − 2Q12 − 2Q66)·s²c² + Q66·(s⁴ + c⁴)
 *
 *   E1, E2  moduli along and across the grain, MPa    G12  shear modulus in the plane, MPa
 *   ν12     strain across per strain along, under a pull along
 *   θ       from the x axis of the plate to the grain, degrees, counter-clockwise
 *
 * Source: theory of laminated plates (textbook). Check: graphite and epoxy, 181, 10.3, 7.17 GPa, ν12 0.28,
 * turned 30°: Q̄ = 109.4, 32.46, 23.65, 54.19, 20.05, 36.74 GPa (Kaw, Mechanics of Composite Materials,
 * example 2.6; memory).
 *
 * Limits: linear and elastic, small strain, no creep; thin against its extent, so that nothing presses
 * through the thickness.
 */

/** Elastic constants of a ply in its own axes: 1 along the grain, 2 across. */
export interface Elastic {
  readonly e1MPa: number
  readonly e2MPa: number
  readonly g12MPa: number
  readonly nu12: number
}

/** Stiffness in the axes of the plate, MPa. */
export type Stiffness = readonly [
  q11: number,
  q12: number,
  q16: number,
  q22: number,
  q26: number,
  q66: number
]

/** Strain, or curvature, in the axes of the plate: x, y and the engineering shear (twist twice). */
export type Plane = readonly [x: number, y: number, xy: number]

/** Constants of a material that is alike in all directions: E in MPa, ν from −0.99 to 0.5. */
export function isotropic(modulusMPa: number, poisson: number): Elastic {
  inRange('modulus', modulusMPa, 1e-6, 1e6, 'MPa')
  inRange('Poisson’s ratio', poisson, -0.99, 0.5, '')
  return { e1MPa: modulusMPa, e2MPa: modulusMPa, g12MPa: modulusMPa / (2 * (1 + poisson)), nu12: poisson }
}

/**
 * Stiffness of a ply whose grain lies at `angleDeg` to x.
 *
 * @throws RangeError: moduli 1e-6..1e6 MPa, |ν12| < √(E1/E2) (else the material would give energy away)
 */
export function stiffnessAt(ply: Elastic, angleDeg: number): Stiffness {
  const { e1MPa, e2MPa, g12MPa, nu12 } = ply
  inRange('modulus along the grain', e1MPa, 1e-6, 1e6, 'MPa')
  inRange('modulus across the grain', e2MPa, 1e-6, 1e6, 'MPa')
  inRange('shear modulus', g12MPa, 1e-6, 1e6, 'MPa')
  inRange('angle of the grain', angleDeg, -36_000, 36_000, '°')
  const most = Math.sqrt(e1MPa / e2MPa)
  inRange('Poisson’s ratio ν12', nu12, -0.999 * most, 0.999 * most, '')
  const left = 1 - (nu12 * nu12 * e2MPa) / e1MPa
  const [q11, q22, q66] = [e1MPa / left, e2MPa / left, g12MPa]
  const q12 = nu12 * q22
  const a = (angleDeg * Math.PI) / 180
  const [c, s] = [Math.cos(a), Math.sin(a)]
  const [c2, s2, sc] = [c * c, s * s, s * c]
  const mixed = 2 * (q12 + 2 * q66) * s2 * c2
  const [u, v] = [q11 - q12 - 2 * q66, q12 - q22 + 2 * q66]
  return [
    q11 * c2 * c2 + mixed + q22 * s2 * s2,
    (q11 + q22 - 4 * q66) * s2 * c2 + q12 * (s2 * s2 + c2 * c2),
    sc * (u * c2 + v * s2),
    q11 * s2 * s2 + mixed + q22 * c2 * c2,
    sc * (u * s2 + v * c2),
    (q11 + q22 - 2 * q12 - 2 * q66) * s2 * c2 + q66 * (s2 * s2 + c2 * c2)
  ]
}

/** A strain along and across the grain (no shear there) in the axes of the plate. */
export function strainAt(along: number, across: number, angleDeg: number): Plane {
  inRange('strain along the grain', along, -0.2, 0.2, '')
  inRange('strain across the grain', across, -0.2, 0.2, '')
  const a = (angleDeg * Math.PI) / 180
  const [c, s] = [Math.cos(a), Math.sin(a)]
  return [along * c * c + across * s * s, along * s * s + across * c * c, 2 * (along - across) * s * c]
}
