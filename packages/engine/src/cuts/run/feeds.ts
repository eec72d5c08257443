import type { CutMaterial } from '../../catalogue/chip-load.ts'
import { CUTTING_ENERGY, SURFACING_CHIP_MM, SURFACING_RPM, V_CHIP_MM } from '../../catalogue/chip-load.ts'
import type { ShopMachine } from '../../piece/shop-schema.ts'
import { decimals } from '../../quantity/format.ts'
import type { Feeds } from '../cut-job.ts'
import { ballDiameterMm, chipRangeMm, radialThinning, rpmRange, vWidthMm } from './chip.ts'
import type { Cutter } from './cutters.ts'
import { deflectionMm } from './deflection.ts'
import { edgeSpeedMMin, feedMmMin, perToothMm } from './edge-speed.ts'
import { cuttingEnergyNmm2, meanForceN, powerW, removedMm3Min, toothForceN, torqueNm } from './force.ts'
import type { Met } from './met.ts'
import { metOnce } from './met.ts'
import { PRACTICE } from './practice.ts'

/** What is done with the cutter. `slot`: full width all the way; `finish`: the last pass along a wall. */
export type CutOperation =
  | 'clear'
  | 'slot'
  | 'outline'
  | 'finish'
  | 'flatten'
  | 'v'
  | 'round'
  | 'drill'
  | 'keyhole'

/** What feeds are asked for. */
export interface FeedsAsk {
  readonly cutter: Cutter
  /** What lies along the cut; empty is taken as hardwood. */
  readonly met: readonly Met[]
  readonly operation: CutOperation
  readonly machine: ShopMachine
  /** Depth of the whole cut, mm. */
  readonly depthMm: number
  /** How far the cut may be off, mm: the cutter bends a third of it at most where it is not gone over again. */
  readonly tolMm: number
  /** Shop below 15 °C, or a wall left thinner than 1.5 mm: light passes. */
  readonly light?: boolean
}

/** Feeds with what they come to. */
export interface CutRun extends Feeds {
  readonly perToothMm: number
  /** Thickest chip, mm, and the least that still cuts. */
  readonly chipMm: number
  readonly leastChipMm: number
  readonly edgeSpeedMMin: number
  /** Push of one tooth, N, and how far it bends the cutter, mm. */
  readonly forceN: number
  readonly deflectionMm: number
  readonly powerW: number
  readonly torqueNm: number
  /** What it cannot be run as it should for; in a maker's words. Empty: all well. */
  readonly faults: readonly CutFault[]
}

export interface CutFault {
  readonly kind: 'too fast' | 'rubs' | 'pushes'
  readonly says: string
  readonly value: number
  readonly limit: number
  readonly unit: string
}

/**
 * How a cutter is run through what it meets.
 *
 * The range of chips and turns of its diameter (catalogue/chip-load.ts) and the depth of a pass of each material met
 * (practice.ts) are taken at their most careful. From the middle chip the feed follows; then each limit in turn brings
 * it down: turns (spindle, marked speed of the cutter), feed of the machine (fewer turns keep the chip), push on the
 * frame and bending of the cutter (shallower passes, then thinner chips), power. What is below the least chip that
 * still cuts is said as a fault: it burns timber and melts resin.
 *
 * Source: table and rules of common practice; formulas of chip.ts, force.ts, deflection.ts.
 * Check: worked examples; no limit is ever passed, over seeded cutters, materials and machines.
 * Limits: starting values for a sharp cutter; kc is known to a factor of two.
 */
export function feedsFor(asked: FeedsAsk): CutRun {
  // A drill only drills.
  const ask = asked.cutter.shape.form === 'drill' ? { ...asked, operation: 'drill' as const } : asked
  const { cutter, operation, machine } = ask
  const { shape, flutes } = cutter
  const met = ask.met.length === 0 ? [{ material: 'hardwood' as const, name: 'timber' }] : metOnce(ask.met)
  const kinds = [...new Set(met.map(m => m.material))]
  const why: string[] = []
  const faults: CutFault[] = []
  const careful = met.reduce((a, b) => (rangeOf(b.material, ask)[1] < rangeOf(a.material, ask)[1] ? b : a))
  const shallow = met.reduce((a, b) => (passMm(b.material, ask) < passMm(a.material, ask) ? b : a))
  const resin = kinds.includes('resin')

  let depth = Math.min(passMm(shallow.material, ask), ask.depthMm)
  const wholeDepth = operation === 'keyhole'
  if (wholeDepth) depth = ask.depthMm
  const step = stepMm(ask, kinds)
  const width = widthMm(ask, step)
  const thin = operation === 'finish' ? Math.max(radialThinning(width, shape.diameterMm), 0.5) : 1
  const [lowChip, highChip] = rangeOf(careful.material, ask)
  const leastChip = Math.min(lowChip, resin ? PRACTICE.leastChipResinMm : PRACTICE.leastChipMm)
  let chip = ask.light ? lowChip : (lowChip + highChip) / 2

  // Turns: the middle of the range of the diameter, its low end in resin, inside what spindle and cutter allow.
  const [lowRpm, highRpm] = operation === 'drill' ? PRACTICE.drillRpm(shape.diameterMm, resin) : turns(ask)
  const most = Math.min(machine.fastest, cutter.fastestRpm ?? machine.fastest)
  const wish = resin || operation === 'drill' ? lowRpm : (lowRpm + highRpm) / 2
  let rpm = Math.max(Math.min(wish, most), machine.slowest)
  if (cutter.fastestRpm !== null && machine.slowest > cutter.fastestRpm)
    faults.push({
      kind: 'too fast',
      says: `the spindle turns ${decimals(machine.slowest, 0)} at its slowest, ${cutter.name} is marked ${decimals(cutter.fastestRpm, 0)}`,
      value: machine.slowest,
      limit: cutter.fastestRpm,
      unit: '1/min'
    })
  else if (
    rpm > PRACTICE.overTurns * highRpm &&
    (operation === 'drill' || operation === 'flatten' || operation === 'keyhole')
  )
    faults.push({
      kind: 'too fast',
      says: `the spindle turns ${decimals(machine.slowest, 0)} at its slowest; ${cutter.name} wants at most ${decimals(highRpm, 0)}`,
      value: rpm,
      limit: highRpm,
      unit: '1/min'
    })
  else if (rpm < wish - 1)
    why.push(
      cutter.fastestRpm !== null && most === cutter.fastestRpm
        ? `turns: ${decimals(most, 0)} is marked on the cutter`
        : `turns: the spindle ends at ${decimals(most, 0)}`
    )
  else if (rpm > wish + 1) why.push(`turns: the spindle begins at ${decimals(rpm, 0)}`)

  // Feed: where the machine cannot keep up, fewer turns keep the chip, down to the least of range and spindle.
  const drill = operation === 'drill'
  const fastest = drill ? Math.min(machine.plunge, machine.feed) : machine.feed
  const keep = fastest / (flutes * (chip / thin))
  if (keep < rpm) {
    // Inside the usual turns for the chip wanted; below them only for the thinnest that is usual.
    const least = fastest / (flutes * (lowChip / thin))
    const fewer = Math.min(
      rpm,
      Math.max(machine.slowest, Math.min(Math.max(keep, lowRpm), Math.max(keep, least)))
    )
    why.push(
      fewer < rpm - 1
        ? `feed: the machine goes ${decimals(fastest, 0)} mm/min at most; ${decimals(fewer, 0)} instead of ${decimals(rpm, 0)} turns keep the chip`
        : `feed: the machine goes ${decimals(fastest, 0)} mm/min at most`
    )
    rpm = fewer
  }
  let feed = Math.min(feedMmMin(rpm, flutes, chip / thin), fastest)
  chip = perToothMm(feed, rpm, flutes) * thin

  // Push and bending: passes get shallower first, then chips thinner. A drill's push goes along it.
  const bendLimit =
    operation === 'finish' || operation === 'v' || operation === 'round' || operation === 'slot'
      ? ask.tolMm / 3
      : PRACTICE.roughBendMm
  const pushAt = (d: number, h: number) =>
    Math.max(
      ...kinds.map(k => toothForceN(cuttingEnergyNmm2(k, Math.max(h, 1e-3)).central, edgeMm(ask, d), h))
    )
  const bendAt = (force: number) =>
    deflectionMm(force, coreMm(ask), shape.fluteMm, shape.shankMm, shape.reachMm)
  if (!drill) {
    const over = () => {
      const push = pushAt(depth, chip)
      return { frame: push / machine.force, bend: bendAt(push) / bendLimit }
    }
    let { frame, bend } = over()
    if (Math.max(frame, bend) > 1) {
      const by =
        frame >= bend
          ? `push: the frame stands ${decimals(machine.force, 0)} N`
          : `bending: the cutter may give ${decimals(bendLimit, 3)} mm`
      const before = depth
      const least = Math.min(
        depth,
        shape.form === 'surfacing' ? PRACTICE.leastSurfacingMm : PRACTICE.leastPass * shape.diameterMm
      )
      if (!wholeDepth) depth = Math.max(depth / Math.max(frame, bend), least)
      ;({ frame, bend } = over())
      if (Math.max(frame, bend) > 1) {
        const thinner = Math.max(chip / thinnerBy(kinds, Math.max(frame, bend)), Math.min(chip, leastChip))
        feed *= thinner / chip
        chip = thinner
        ;({ frame, bend } = over())
      }
      why.unshift(
        depth < before - 1e-6 ? `${by}: ${decimals(depth, 2)} instead of ${decimals(before, 2)} deep` : by
      )
      if (frame > 1 + 1e-6)
        faults.push({
          kind: 'pushes',
          says: `${cutter.name} pushes ${decimals(pushAt(depth, chip), 0)} N at the lightest; the frame stands ${decimals(machine.force, 0)}`,
          value: pushAt(depth, chip),
          limit: machine.force,
          unit: 'N'
        })
    }
  }

  // Power: what the spindle gives at the edge.
  const energy = () => Math.max(...kinds.map(k => cuttingEnergyNmm2(k, Math.max(chip, 1e-3)).central))
  const drillArea = (Math.PI / 4) * shape.diameterMm ** 2
  const removed = () => (drill ? drillArea * feed : removedMm3Min(width, edgeMm(ask, depth), feed))
  const have = machine.spindle * PRACTICE.spindleShare
  if (powerW(energy(), removed()) > have) {
    for (let i = 0; i < 60 && powerW(energy(), removed()) > have; i++) {
      feed *= 0.95
      chip *= 0.95
    }
    why.unshift(`power: ${decimals(have, 0)} W at the edge`)
  }

  if (chip < leastChip - 1e-9)
    faults.push({
      kind: 'rubs',
      says: `${cutter.name} takes chips of ${decimals(chip, 3)} mm where ${decimals(leastChip, 3)} is the least that cuts: it rubs, ${resin ? 'melts resin' : 'burns'} and dulls`,
      value: chip,
      limit: leastChip,
      unit: 'mm'
    })
  const share = resin ? PRACTICE.plungeShareResin : PRACTICE.plungeShare
  const plunge = drill ? feed : Math.min(feed * share, machine.plunge)
  const rampDeg = drill || wholeDepth ? 90 : resin ? PRACTICE.rampResinDeg : PRACTICE.rampWoodDeg
  const ramp = Math.min(feed * PRACTICE.rampShare, plunge / Math.sin((rampDeg * Math.PI) / 180))
  const cutting = cutDiameterMm(ask, depth)
  const speed = edgeSpeedMMin(cutting, rpm)
  const power = powerW(energy(), removed())
  // What sets it where nothing else did.
  why.push(
    `chip ${decimals(chip, 3)} mm a tooth: ${chip < lowChip - 1e-6 ? 'thin, ' : ''}${careful.name} takes ${decimals(lowChip, 3)} to ${decimals(highChip, 3)}`
  )
  if (!drill && !wholeDepth) why.push(`${decimals(depth, 2)} deep a pass: ${shallow.name}`)
  if (resin && !drill)
    why.push('resin: one or two polished edges, climb, air on the chips; stop when they stick together')
  if (ask.light) why.push('cold or thin: light passes')
  return {
    rpm: Math.max(Math.floor(rpm / 10) * 10, Math.min(machine.slowest, Math.floor(rpm))),
    feedMmMin: floorTo(feed, 1),
    plungeMmMin: floorTo(plunge, 1),
    rampMmMin: floorTo(ramp, 1),
    rampDeg,
    depthMm: Math.max(depth, 0.01),
    stepMm: step,
    allowanceMm: allowanceMm(ask, resin),
    climb: resin || operation === 'finish' || machine.error < PRACTICE.climbBelowErrorMm,
    why,
    perToothMm: chip / thin,
    chipMm: chip,
    leastChipMm: leastChip,
    edgeSpeedMMin: speed,
    forceN: drill ? meanForceN(power, Math.max(speed, 1e-3)) : pushAt(depth, chip),
    deflectionMm: drill ? 0 : bendAt(pushAt(depth, chip)),
    powerW: power,
    torqueNm: torqueNm(power, rpm),
    faults
  }
}

function rangeOf(material: CutMaterial, { cutter, operation }: FeedsAsk): readonly [number, number] {
  const { form, diameterMm, neckMm } = cutter.shape
  if (form === 'v') return V_CHIP_MM
  if (form === 'surfacing') {
    const [low, high] = SURFACING_CHIP_MM
    return material === 'resin' || material === 'dense' ? [low, (low + high) / 2] : [low, high]
  }
  // The neck of a keyhole cutter is what breaks, so its chips are those of a cutter as thick.
  return chipRangeMm(material, operation === 'keyhole' ? Math.max(neckMm, 1) : diameterMm)
}

function turns({ cutter }: FeedsAsk): readonly [number, number] {
  const { form, diameterMm } = cutter.shape
  return form === 'surfacing' ? SURFACING_RPM : rpmRange(diameterMm)
}

function passMm(material: CutMaterial, { cutter, operation, light, depthMm }: FeedsAsk): number {
  const { form, diameterMm, fluteMm } = cutter.shape
  const gentle = light ? 0.5 : 1
  if (operation === 'keyhole') return depthMm
  if (operation === 'drill') return PRACTICE.peck[material] * diameterMm * gentle
  if (form === 'surfacing') return Math.min(PRACTICE.surfacingPassMm[material] * gentle, fluteMm)
  if (form === 'v') return PRACTICE.vPassMm * gentle
  const share =
    diameterMm <= PRACTICE.tinyMm
      ? Math.min(PRACTICE.tinyPass, PRACTICE.pass[material])
      : PRACTICE.pass[material]
  return Math.min(share * diameterMm * gentle, fluteMm)
}

function stepMm({ cutter, operation }: FeedsAsk, kinds: readonly CutMaterial[]): number {
  const { diameterMm, form } = cutter.shape
  const resin = kinds.includes('resin')
  if (operation === 'flatten' && form === 'surfacing')
    return diameterMm * (resin ? 0.4 : PRACTICE.flattenStep)
  return diameterMm * PRACTICE.step
}

// Width in engagement at its worst: the first ring of a pocket is a slot.
function widthMm(ask: FeedsAsk, step: number): number {
  const { diameterMm } = ask.cutter.shape
  if (ask.operation === 'finish') return Math.min(PRACTICE.allowanceMm, diameterMm)
  if (ask.operation === 'flatten') return step
  return cutDiameterMm(ask, ask.depthMm)
}

// The diameter at which the edge cuts fastest at a depth of cut.
function cutDiameterMm({ cutter, depthMm }: FeedsAsk, pass: number): number {
  const { form, diameterMm, angleDeg, tipMm } = cutter.shape
  const d = Math.min(pass, depthMm)
  if (form === 'ball') return ballDiameterMm(diameterMm, d)
  if (form === 'v') return Math.max(Math.min(vWidthMm(angleDeg, d, tipMm), diameterMm), 0.1)
  return diameterMm
}

// Of a V the mean of a triangle's width cuts: half the depth counts. A keyhole's head cuts its own height.
function edgeMm({ cutter, operation }: FeedsAsk, pass: number): number {
  if (cutter.shape.form === 'v') return pass / 2
  return operation === 'keyhole' ? cutter.shape.headMm : pass
}

function coreMm({ cutter }: FeedsAsk): number {
  const { form, diameterMm, neckMm } = cutter.shape
  return form === 'keyhole'
    ? neckMm
    : form === 'surfacing'
      ? Math.min(diameterMm, cutter.shape.shankMm)
      : diameterMm
}

// Push goes with chip^(1 − m): the largest m brings it down for all that are met.
function thinnerBy(kinds: readonly CutMaterial[], over: number): number {
  const power = Math.max(...kinds.map(k => CUTTING_ENERGY[k].power))
  return over ** (1 / (1 - power))
}

function allowanceMm({ operation, cutter }: FeedsAsk, resin: boolean): number {
  if (operation !== 'clear' && operation !== 'outline') return 0
  return Math.min(resin ? PRACTICE.allowanceResinMm : PRACTICE.allowanceMm, cutter.shape.diameterMm / 6)
}

// Never faster than reckoned; what a figure lacks by rounding alone is no step less.
function floorTo(x: number, step: number): number {
  return Math.max(step, Math.floor(x / step + 1e-6) * step)
}
