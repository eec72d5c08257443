import type { IndexPlan } from '../cuts/pins/index-plan.ts'
import type { Patch } from '../piece/patch.ts'
import { decimals } from '../quantity/format.ts'
import { bounds } from '../shape/measure.ts'
import type { Region } from '../shape/region.ts'
import type { Check, Found } from './finding.ts'
import { setValue } from './fix.ts'
import type { Work } from './work.ts'

/** Height a cutter is lifted over the work between cuts, mm (common practice). */
const LIFT_MM = 5

/** Work for the machine that it does not reach. */
export const largerThanMachine: Check = {
  id: 'larger-than-machine',
  about: 'a piece, or a cut in it, larger than the machine reaches, and whether it can be moved along',
  cases: [],
  run
}

interface Span {
  readonly x: number
  readonly y: number
}

function run(work: Work): Found[] {
  const { machine } = work.shop
  if (machine === undefined) return []
  const { geometry, cuts, markings } = work.stack
  const { index, noIndex } = work.pins
  const jobs = [
    ...work.entries.cuts.map(c => ({
      at: c.at,
      id: c.id,
      way: c.value.way,
      span: spanOf(geometry.cutRegions[c.index] ?? null, geometry.cutLines[c.index] ?? null, c.value.width),
      depth: cuts[c.index]!.day ?? work.stack.castHeight
    })),
    ...work.entries.markings.map(m => ({
      at: m.at,
      id: m.id,
      way: m.value.way,
      span: spanOf(null, geometry.markingLines[m.index]!, m.value.width),
      depth: markings[m.index]!.day ?? 0
    }))
  ].filter(j => j.way === 'machine')
  if (jobs.length === 0) return []
  const reach = `${decimals(machine.x, 0)} × ${decimals(machine.y, 0)} × ${decimals(machine.z, 0)}`
  const basis =
    'travel of the machine: the shop; on either of its sides; 5 mm lift over the work: common practice'
  const out = jobs.flatMap((j): Found[] => {
    const flat = index !== null || fits(j.span, machine)
    if (flat && j.depth + LIFT_MM <= machine.z) return []
    const size = flat
      ? `is ${decimals(j.depth, 1)} mm deep`
      : `spans ${decimals(j.span.x, 0)} × ${decimals(j.span.y, 0)} mm`
    return [
      {
        severity: 'stop',
        at: j.at,
        says: `${j.id} ${size}; the machine reaches ${reach} mm: ${flat ? 'cutter and lift do not go in' : 'it is not cut in one set-up'}.${flat || noIndex === null ? '' : ` It cannot be moved along: ${noIndex}.`} Cut it by hand, send it out, or split it.`,
        value: flat ? j.depth + LIFT_MM : lacking(j.span, machine),
        unit: 'mm',
        limit: flat ? machine.z : reachOf(j.span, machine),
        basis,
        fix: setValue(work.document, `${j.at}/way`, 'sent out'),
        fixSays: `Send ${j.id} out`
      }
    ]
  })
  const casting = spanOf(geometry.mould, null)
  if (out.length > 0 || fits(casting, machine)) return out
  if (index !== null) return [movedAlong(casting, reach, index)]
  const fix: Patch = jobs.flatMap(j => setValue(work.document, `${j.at}/way`, 'sent out'))
  return [
    {
      severity: 'caution',
      at: '/outline',
      says: `the casting is ${decimals(casting.x, 0)} × ${decimals(casting.y, 0)} mm and hangs over the machine, which reaches ${reach} mm; its cuts are within reach. Carry its overhang, and tie the place of every cut to the pins.${noIndex === null ? '' : ` It cannot be moved along: ${noIndex}.`}`,
      value: lacking(casting, machine),
      unit: 'mm',
      limit: reachOf(casting, machine),
      basis,
      fix,
      fixSays: `Send ${jobs.map(j => j.id).join(', ')} out`
    }
  ]
}

function movedAlong(casting: Span, reach: string, index: IndexPlan): Found {
  const { strips, pitchMm, axis, travelMm, pairs } = index
  const long = axis === 'x' ? casting.x : casting.y
  const sizes = pairs[0]!.map(h => decimals(h.diameterMm, 1)).join(' and ')
  return {
    severity: 'note',
    at: '/outline',
    says: `the casting is ${decimals(casting.x, 0)} × ${decimals(casting.y, 0)} mm and the machine reaches ${reach} mm: it is worked in ${strips.length} positions, moved along by ${decimals(pitchMm, 0)} mm each time, on index pins ${sizes} mm across in the waste on its two long sides. Each position has its own programs. Lay what hangs over level on a stand.`,
    value: long,
    unit: 'mm',
    limit: travelMm,
    basis:
      'travel of the machine: the shop; strips that overlap by two of the widest cutter and 10 mm, index holes 1.5 diameters from the edge of the casting and 3 mm from every cut: common practice, no source'
  }
}

function spanOf(region: Region | null, lines: readonly Float64Array[] | null, widthMm = 0): Span {
  const b = bounds(region ?? { rings: lines ?? [] })
  const more = region === null ? widthMm : 0
  return { x: b.maxX - b.minX + more, y: b.maxY - b.minY + more }
}

function fits(span: Span, machine: Span): boolean {
  return (
    Math.max(span.x, span.y) <= Math.max(machine.x, machine.y) &&
    Math.min(span.x, span.y) <= Math.min(machine.x, machine.y)
  )
}

// Of the long and the short side, the one that lacks more, and the travel it has.
function worse(span: Span, machine: Span): { span: number; reach: number } {
  const long = { span: Math.max(span.x, span.y), reach: Math.max(machine.x, machine.y) }
  const short = { span: Math.min(span.x, span.y), reach: Math.min(machine.x, machine.y) }
  return long.span - long.reach >= short.span - short.reach ? long : short
}

function lacking(span: Span, machine: Span): number {
  return worse(span, machine).span
}

function reachOf(span: Span, machine: Span): number {
  return worse(span, machine).reach
}
