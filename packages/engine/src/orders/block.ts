import type { Work } from '../findings/work.ts'
import type { Face, Pour } from '../piece/piece-schema.ts'
import { difference } from '../shape/combine.ts'
import { area } from '../shape/measure.ts'
import type { Region } from '../shape/region.ts'
import { strokeAll } from '../stack/groove-region.ts'
import type { Step } from '../steps/step.ts'
import { pourFace } from '../steps/step.ts'
import { stepKeys } from '../steps/step-key.ts'

/** A step that may stand elsewhere, with the waits that belong to it. */
export interface Block {
  /** Its place in the given order, from 0. */
  readonly index: number
  readonly step: Step
  readonly waits: readonly Step[]
  /** The face that has to be up; null: either. */
  readonly face: Face | null
  /** A cut that is filled later. */
  readonly filled: boolean
  /** What it fills is open at the edge of the finished piece. */
  readonly open: boolean
}

/** The order of a build taken apart: what keeps its place, and what may stand elsewhere. */
export interface Blocks {
  readonly head: readonly Step[]
  readonly blocks: readonly Block[]
  readonly tail: readonly Step[]
  /** The face that is up when the first block begins. */
  readonly up: Face | null
}

/** Steps of the mould and what lies in it: their order is that of the layers. */
function ofMould({ kind, pour }: Step): boolean {
  if (kind === 'pour') return layer(pour!.value)
  return ['prepare timber', 'make mould', 'set timber', 'set stones', 'demould'].includes(kind)
}

function layer(pour: Pour): boolean {
  return pour.kind === 'cast' || pour.kind === 'seal'
}

/**
 * Takes an order apart. Everything up to the last step of the mould keeps its place, and so does what is begun or done
 * by the readings, and everything up to the last step that has a moment of its own. The turnings over are left out:
 * they follow from the faces. A wait stays with the step before it. What is delivered comes last.
 */
export function blocksOf(work: Work): Blocks {
  const { steps } = work
  const keys = stepKeys(steps)
  const told = new Set(work.readings.flatMap(r => ('step' in r && r.step !== undefined ? [r.step] : [])))
  let from =
    steps.findLastIndex(
      (s, i) =>
        ofMould(s) || s.begins !== undefined || s.pour?.value.start !== undefined || told.has(keys[i]!)
    ) + 1
  while (steps[from]?.kind === 'wait') from++
  const end = steps.findIndex((s, i) => i >= from && s.kind === 'deliver')
  const to = end < 0 ? steps.length : end
  const into = new Set(work.piece.pours.flatMap(p => (p.kind === 'inlay' ? (p.into ?? []) : [])))
  const blocks: (Block & { readonly waits: Step[] })[] = []
  for (const step of steps.slice(from, to)) {
    if (step.kind === 'wait') blocks.at(-1)?.waits.push(step)
    else if (step.kind !== 'turn over')
      blocks.push({
        index: blocks.length,
        step,
        waits: [],
        face: faceOf(work, step),
        filled: step.cut !== undefined && into.has(step.cut.id),
        open: openAtEdge(work, step)
      })
  }
  return { head: steps.slice(0, from), blocks, tail: steps.slice(to), up: steps[from]?.up ?? null }
}

function faceOf(work: Work, step: Step): Face | null {
  if (step.kind === 'pour') return pourFace(step.pour!.value, work.piece)
  const { kind, face } = step
  return ['flatten', 'sand', 'cut', 'mark', 'fill'].includes(kind) && face !== 'both' ? (face ?? null) : null
}

/** What stands over the outline by less is drawn to it, mm²; how far a line drawn wide may stray, mm. */
const HAIR_MM2 = 0.5
const TOLERANCE_MM = 0.05

function openAtEdge(work: Work, { kind, pour, marking }: Step): boolean {
  const { geometry } = work.stack
  const over = (region: Region) => area(difference(region, geometry.outline)) > HAIR_MM2
  const drawn = (lines: readonly Float64Array[] | null | undefined, widthMm: number) =>
    lines !== null && lines !== undefined && over(strokeAll(lines, widthMm, TOLERANCE_MM))
  if (kind === 'fill') return drawn(geometry.markingLines[marking!.index], marking!.value.width)
  return (pour?.value.into ?? []).some(id => {
    const cut = work.entries.cuts.find(c => c.id === id)!
    const region = geometry.cutRegions[cut.index] ?? null
    return region !== null
      ? over(region)
      : drawn(geometry.cutLines[cut.index], cut.value.width ?? TOLERANCE_MM)
  })
}

/** Whether a step fills what is cut: a marking, or an inlay. */
export function fills({ kind, pour }: Step): boolean {
  return kind === 'fill' || (kind === 'pour' && pour!.value.kind === 'inlay')
}

/** Whether a step covers or works this face. */
export function onFace(block: Block, face: Face): boolean {
  return block.face === face || block.step.face === face || block.step.face === 'both'
}
