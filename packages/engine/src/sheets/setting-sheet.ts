import type { MachineSetting } from '../cuts/operation/operation.ts'
import { pointToProgram, regionToProgram } from '../cuts/pins/frame.ts'
import type { Work } from '../findings/work.ts'
import type { ProgramFile, ProgramSet } from '../programs/program-set.ts'
import type { StepProof } from '../programs/prove-set.ts'
import { decimals } from '../quantity/format.ts'
import { intersection } from '../shape/combine.ts'
import { bounds } from '../shape/measure.ts'
import type { Bounds, Region } from '../shape/region.ts'
import type { Mark, Sheet } from './mark.ts'
import { line, text } from './mark.ts'
import { pathLines } from './path-lines.ts'
import type { View } from './view.ts'
import { fitted, linesOnSheet, onSheet, regionOnSheet } from './view.ts'

/** Round the casting, and above and below it for what is written there, mm. */
const SIDE_MM = 8
const FOOT_MM = 9
export const HEAD_MM = 7
/** How far the line of the flip runs past the casting, mm. */
const PAST_MM = 4
/** A ring round what a program runs into, mm. */
const RING_MM = 4

/** Room for a drawing, mm. */
export interface SettingSize {
  readonly widthMm: number
  readonly mostHeightMm: number
}

/**
 * The piece as it lies on the machine in a setting, seen from above: casting with its waste, outline, pins and the line it is turned over about, the ways of the cutters (one program's alone where it is named), and rings where
 * proving found something; to lie over the materials ({@link ./setting-surface.ts}). x and y as the machine has them.
 */
export function settingSheet(
  work: Work,
  set: ProgramSet,
  proofs: readonly StepProof[],
  setting: number,
  size: SettingSize,
  only: string | null = null
): Sheet {
  const on = set.machining.settings[setting]!
  const { geometry } = work.stack
  const lies = (plan: Region) => regionToProgram(on.frame, plan)
  const { casting, box, view, topMm } = settingView(work, on, size)
  const programs = set.programs.filter(
    p => p.made[0]!.operation.setting === setting && (only === null || p.file === only)
  )
  const region = (r: Region, ink: 'outline' | 'edge' | 'hidden'): Mark => ({
    kind: 'region',
    rings: regionOnSheet(view, r),
    paint: null,
    hatch: null,
    edge: ink
  })
  const marks: Mark[] = [
    {
      kind: 'group',
      name: 'on-face',
      marks: [
        region(casting, 'edge'),
        ...geometry.timbers.map(t => region(intersection(lies(t.upper), casting), 'edge')),
        region(lies(geometry.outline), 'outline'),
        // Rows over the whole face would hide all else: they are drawn when they are asked for.
        ...programs.flatMap(p => (only === null && flattens(p) ? [] : waysOf(p, view))),
        ...stripEnds(on, view, box)
      ]
    },
    ...flipLine(set, view, box),
    ...pinMarks(set, setting, view),
    ...rings(proofs, set, setting, view, only)
  ]
  return { widthMm: size.widthMm, heightMm: topMm + HEAD_MM, marks }
}

/** How the casting lies on the drawing of a setting; `topMm` is its far edge there. */
export function settingView(
  work: Work,
  { frame }: MachineSetting,
  size: SettingSize
): { readonly casting: Region; readonly box: Bounds; readonly view: View; readonly topMm: number } {
  const casting = regionToProgram(frame, work.stack.geometry.mould)
  const box = bounds(casting)
  const room = {
    widthMm: size.widthMm - 2 * SIDE_MM,
    heightMm: size.mostHeightMm,
    left: SIDE_MM,
    foot: FOOT_MM
  }
  const view = fitted(box, room, false)
  return { casting, box, view, topMm: FOOT_MM + (box.maxY - box.minY) * view.scale }
}

// Ways in the work; those over it would only hide them.
function waysOf(program: ProgramFile, view: View): Mark[] {
  return program.made.map(({ path, operation }): Mark => {
    const lines = pathLines(path, operation.job.topMm)
    return { kind: 'path', ink: 'curve', lines: linesOnSheet(view, lines), widthMm: 0.16 }
  })
}

function flattens({ made }: ProgramFile): boolean {
  return made.every(m => m.operation.kind === 'flatten')
}

// Of a piece that is moved along: where the stretch ends that is worked in this position.
function stripEnds({ position }: MachineSetting, view: View, box: Bounds): Mark[] {
  if (position === null) return []
  const { fromMm, toMm } = position.strips[position.number - 1]!
  return [fromMm, toMm].map(u =>
    position.axis === 'x'
      ? line('hidden', onSheet(view, u, box.minY), onSheet(view, u, box.maxY))
      : line('hidden', onSheet(view, box.minX, u), onSheet(view, box.maxX, u))
  )
}

function flipLine(set: ProgramSet, view: View, box: Bounds): Mark[] {
  if (new Set(set.machining.settings.map(s => s.setting.index)).size < 2) return []
  const past = PAST_MM / view.scale
  return set.machining.pins.datum.about === 'x'
    ? [line('axis', onSheet(view, box.minX - past, 0), onSheet(view, box.maxX + past, 0))]
    : [line('axis', onSheet(view, 0, box.minY - past), onSheet(view, 0, box.maxY + past))]
}

function pinMarks(set: ProgramSet, setting: number, view: View): Mark[] {
  const { frame, position } = set.machining.settings[setting]!
  const pins = set.machining.pins.pins.map((p, i) => ({
    diameterMm: p.diameterMm,
    name: `pin ${i + 1}`,
    at: { x: pointToProgram(frame, p.x, p.y)[0], y: pointToProgram(frame, p.x, p.y)[1] }
  }))
  const holes = (position?.stands ?? []).map(h => ({ ...h, name: 'index pin', at: h }))
  const made = (position?.makes ?? []).map(h => ({ ...h, name: 'index hole', at: h }))
  return [...pins, ...holes, ...made].flatMap((p): Mark[] => {
    const at = onSheet(view, p.at.x, p.at.y)
    const radiusMm = Math.max(0.8, (p.diameterMm / 2) * view.scale)
    return [
      { kind: 'circle', ink: 'outline', at, radiusMm },
      { kind: 'circle', ink: 'outline', at, radiusMm: 0.25, filled: true },
      text([at[0], at[1] - radiusMm - 3], `${p.name}, Ø ${decimals(p.diameterMm, 1)}`, {
        lettering: 'caption',
        heightMm: 2.6,
        anchor: 'middle'
      })
    ]
  })
}

// Where proving found something.
function rings(
  proofs: readonly StepProof[],
  set: ProgramSet,
  setting: number,
  view: View,
  only: string | null
): Mark[] {
  return proofs
    .filter(p => p.setting === setting && (only === null || p.programs.some(x => x.file === only)))
    .flatMap(p => p.proof.reports)
    .filter(r => Number.isFinite(r.x) && set.machining.settings.length > 0)
    .map((r): Mark => ({ kind: 'circle', ink: 'stop', at: onSheet(view, r.x, r.y), radiusMm: RING_MM }))
}
