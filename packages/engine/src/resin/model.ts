import type { ResinRecord } from '../catalogue/resin.ts'

/** What the models take of a resin: kinetics, flow and bulk, of a family that is predicted. */
export type ResinModel = NonNullable<ResinRecord['model']>
