import type { CutterShape } from '../catalogue/cutter-shape.ts'
import type { Proof } from '../proving/judge/prove.ts'
import { decimals } from '../quantity/format.ts'
import type { ProgramSet } from './program-set.ts'

/** What stands too high because no cutter of the programs of a step comes to it. mm; place in program coordinates. */
export interface Unreached {
  readonly mostMm: number
  /** Of the cells that are told apart: a strip of one or two beside every wall is not counted. */
  readonly areaMm2: number
  readonly x: number
  readonly y: number
  /** Radius of the narrowest cutter, which corners keep; of a V, half its tip. */
  readonly radiusMm: number
  /** What stays, and what is done about it by hand. */
  readonly says: string
}

/** Less than this is sanded away unseen: mm high; mm² of it (practice). */
const SEEN_MM = 0.1
const SEEN_MM2 = 0.5

/** null: all is reached, or so near that it is not seen, or nothing was held against what is wanted. */
export function unreachedOf(
  set: ProgramSet,
  programs: readonly { readonly file: string }[],
  { comparison }: Pick<Proof, 'comparison'>
): Unreached | null {
  const most = comparison?.unreached
  if (most === undefined || most.mostMm < SEEN_MM || most.areaMm2 < SEEN_MM2) return null
  const cutters = set.programs
    .filter(p => programs.some(q => q.file === p.file))
    .flatMap(p => p.made.map(m => m.operation.cutter.shape))
  const narrow = cutters.reduce((a, b) => (cornerOf(b) < cornerOf(a) ? b : a))
  const radiusMm = cornerOf(narrow)
  const { mostMm, areaMm2, x, y } = most
  return { mostMm, areaMm2, x, y, radiusMm, says: words(narrow, radiusMm, mostMm) }
}

// How narrow a corner it comes into, seen from above.
function cornerOf({ form, diameterMm, tipMm }: CutterShape): number {
  return (form === 'v' ? tipMm : diameterMm) / 2
}

function words({ form }: CutterShape, radiusMm: number, mostMm: number): string {
  const high = `up to ${decimals(mostMm, 1)} mm stays`
  const radius = decimals(radiusMm, 2)
  if (form === 'v')
    return `The V, ${radius} mm round at its tip, does not come into the foot of every groove: ${high}. It stays blunt there, or is pared by hand with a knife`
  if (form === 'ball')
    return `A round-nosed cutter of radius ${radius} mm leaves the foot of walls round: ${high}. Pare it by hand with a chisel, or plan the corner as round as that`
  return `A cutter of radius ${radius} mm does not come into every corner: ${high}. Pare it by hand with a chisel, or plan corners of ${radius} mm or more`
}
