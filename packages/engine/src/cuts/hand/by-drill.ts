import { decimals } from '../../quantity/format.ts'
import { drillMinutes } from './bench-minutes.ts'
import type { Drawer, DrillBit } from './drawer.ts'
import { drillOfSize } from './drawer.ts'
import type { Doing, HandJob } from './hand-cut.ts'
import { roundsOf } from './plan-form.ts'

/** A bit within this of a hole makes it, mm. */
const SAME_BIT_MM = 0.1
/** From this diameter a pilot hole or a stand keeps the bit where it is put; deeper than so many diameters it is lifted (practice). */
const PILOT_FROM_MM = 8
const LIFT_DEPTHS = 3

/** A bit of the drill for round holes; flat-bottomed where the floor shows. A text says why it cannot be done. */
export function byDrill(job: HandJob, drawer: Drawer, press: boolean): Doing | string {
  if (job.region === null) return job.kind === 'marking' ? 'no: lines' : 'no: a groove'
  if (job.kind === 'outline') return 'no: an outline'
  const holes = roundsOf(job.region)
  if (holes === null) return 'no: not round'
  const bits: DrillBit[] = []
  for (const hole of holes) {
    const bit = bitFor(hole.diameterMm, job, drawer)
    if (typeof bit === 'string') return bit
    bits.push(bit)
  }
  const names = [...new Set(bits.map(b => `${decimals(b.diameterMm, 1)}`))]
  const largest = Math.max(...bits.map(b => b.diameterMm))
  const flat = bits.some(b => b.flat)
  return {
    tool: `drill ${names.join(', ')}${press ? ', on a stand' : ''}`,
    offsetMm: null,
    bushMm: null,
    bitMm: largest,
    leastRadiusMm: null,
    openingCornerMm: null,
    corners: [],
    reach: null,
    passes: null,
    holes,
    tipMm: Math.max(...bits.map(b => b.tipMm)),
    sled: null,
    minutes: drillMinutes(holes.length),
    does: [
      ...(job.through
        ? ['A clean backer clamped beneath, or from both faces to the middle.']
        : [
            `${flat ? 'The floor comes out flat but for the pit of the point' : 'The floor follows the point'}: it goes ${decimals(Math.max(...bits.map(b => b.tipMm)), 1)} mm deeper than the depth that is set.`
          ]),
      ...(largest >= PILOT_FROM_MM && !flat ? ['Pilot of a third of the size first.'] : []),
      ...(press ? [] : ['By hand: a guide block or a square beside the bit keeps it upright.']),
      ...(job.depthMm > LIFT_DEPTHS * largest ? ['Lift it often: chips heat and resin grabs.'] : [])
    ]
  }
}

/** Up to this size twist drills are sold at every tenth; beyond it, to the largest of the catalogue, bits with a flat floor at every millimetre, mm (practice). */
const TWIST_TO_MM = 13

function bitFor(diameterMm: number, job: HandJob, drawer: Drawer): DrillBit | string {
  const alike = drawer.drills.filter(b => Math.abs(b.diameterMm - diameterMm) <= SAME_BIT_MM)
  const largest = Math.max(0, ...drawer.drills.map(b => b.diameterMm))
  // A drawer that nobody listed holds what is sold.
  if (alike.length === 0 && !drawer.ownDrills && diameterMm <= largest + SAME_BIT_MM)
    return drillOfSize(diameterMm, diameterMm > TWIST_TO_MM)
  if (alike.length === 0)
    return `no: no bit of ${decimals(diameterMm, 1)}; the largest is ${decimals(largest, 1)}`
  const long = alike.filter(b => b.lengthMm === null || b.lengthMm >= job.depthMm - 0.05)
  if (long.length === 0)
    return `no: ${decimals(job.depthMm, 1)} deep; the bit of ${decimals(diameterMm, 1)} drills ${decimals(Math.max(...alike.map(b => b.lengthMm ?? 0)), 0)}`
  const flat = long.find(b => b.flat)
  const keen = long.find(b => !b.flat)
  return job.through ? (keen ?? flat!) : (flat ?? keen!)
}
