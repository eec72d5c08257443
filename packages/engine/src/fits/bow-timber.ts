import { bendingModulusOf, LONGITUDINAL_OVER_BENDING } from '../catalogue/timber.ts'
import { elasticOf, POISSON_DOUGLAS_FIR } from '../catalogue/timber-elastic.ts'
import type { TimberRecord } from '../catalogue/timber-record.ts'
import type { Timber } from '../piece/piece-schema.ts'
import type { Elastic } from '../plate/ply.ts'

/**
 * Elastic constants of a timber in the plane of the piece, by how its rings stand to the face.
 *
 *   flat      across the grain lies T    E2 = E_T    G12 = G_LT    ν12 = ν_LT
 *   quarter   across the grain lies R    E2 = E_R    G12 = G_LR    ν12 = ν_LR
 *   rift      45° between:  1/E2 = ¼·(1/E_R + 1/E_T − 2·ν_RT/E_R + 1/G_RT), G12 and ν12 the means
 *
 * Source: Wood Handbook tables 5-1 and 5-2 (timber-elastic.ts); rotation of the compliance in the plane across the
 * grain (textbook). Where a species was not measured in shear: {@link SHEAR}, {@link ROLLING}.
 * Check: rift is softer across than either of flat and quarter for every species measured (test).
 *
 * Limits: at about 12 % moisture, short time, straight grain. Poisson's ratios are Douglas-fir's for all species.
 */
export function timberElastic(record: TimberRecord, rings: Timber['rings']): Elastic {
  const row = elasticOf(record.id)
  const bending = bendingModulusOf(record)?.value ?? MIDDLING_MPA
  const e1MPa = LONGITUDINAL_OVER_BENDING * bending
  const [er, et] = [e1MPa * row.radialRatio, e1MPa * row.tangentialRatio]
  const lr = e1MPa * (row.shearLongRadialRatio ?? SHEAR)
  const lt = e1MPa * (row.shearLongTangentialRatio ?? SHEAR)
  const rt = e1MPa * (row.shearRadialTangentialRatio ?? ROLLING)
  const nu = POISSON_DOUGLAS_FIR
  switch (rings) {
    case 'flat':
      return { e1MPa, e2MPa: et, g12MPa: lt, nu12: nu.lt }
    case 'quarter':
      return { e1MPa, e2MPa: er, g12MPa: lr, nu12: nu.lr }
    case 'rift':
      return {
        e1MPa,
        e2MPa: 4 / (1 / er + 1 / et - (2 * nu.rt) / er + 1 / rt),
        g12MPa: (lr + lt) / 2,
        nu12: (nu.lr + nu.lt) / 2
      }
  }
}

/** G_LR and G_LT over E_L where a species has none: the mean of all in Wood Handbook table 5-1 (derived). */
const SHEAR = 0.084
/** G_RT over E_L where a species has none: the mean of the fifteen in table 5-1, 0.003 to 0.028 (derived). */
const ROLLING = 0.014
/** Bending modulus of a timber of which neither it nor the density is known, MPa (practice: a middling hardwood). */
const MIDDLING_MPA = 11_000
