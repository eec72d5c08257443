/** How the lower end of a cutter is formed. */
export type CutterForm = 'flat' | 'ball' | 'bull' | 'v' | 'drill' | 'surfacing' | 'keyhole'

/**
 * One cutter as it stands in the spindle: the solid it sweeps as it turns. mm, degrees; heights from its lowest point.
 *
 *   flat, surfacing    r ≤ D/2 at height 0
 *   ball               z(r) = R − √(R² − r²), R = D/2
 *   bull               flat to D/2 − c, then a quarter circle of radius c
 *   v                  flat of `tipMm` across, then (r − tip/2)/tan(angle/2) up to D/2
 *   drill              a cone of the point angle up to D/2
 *   keyhole            a head D across and `headMm` high under a neck of `neckMm`
 *
 * Above its edges (`fluteMm`) comes the shank, above `reachMm` the holder.
 */
export interface CutterShape {
  readonly form: CutterForm
  readonly diameterMm: number
  /** Radius of the corner of a bull-nose; else 0. */
  readonly cornerMm: number
  /** Included angle of a V or of the point of a drill; else 180. */
  readonly angleDeg: number
  /** Width of the blunt tip of a V; else 0. */
  readonly tipMm: number
  /** Height of the cutting edges. */
  readonly fluteMm: number
  /** Diameter of the shank above the edges. */
  readonly shankMm: number
  /** How far it stands out of the holder. */
  readonly reachMm: number
  /** Diameter of the holder or nut above it. */
  readonly holderMm: number
  /** Of a keyhole cutter: height of the head and diameter of the neck; else 0. */
  readonly headMm: number
  readonly neckMm: number
  /** Whether its edges meet in the middle, so that it may go straight down. */
  readonly plunges: boolean
}
