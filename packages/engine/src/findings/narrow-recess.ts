import { decimals } from '../quantity/format.ts'
import { holdsBubbleBelowMm } from '../resin/bubble.ts'
import { inradius } from '../shape/inradius.ts'
import { bounds } from '../shape/measure.ts'
import type { Check, Found } from './finding.ts'
import type { Work } from './work.ts'

/** A narrow, deep recess filled with resin in one go: its air stays in as pinholes. */
export const narrowRecess: Check = {
  id: 'narrow-recess',
  about: 'letters, dots and grooves too narrow to fill in one go without pinholes',
  cases: ['C42', 'C43'],
  run
}

/** A stroke lets air out along itself: about three millimetres are enough there (practice, no source). */
const STROKE_MM = 3
/** Times its width that a recess is long to count as a stroke. */
const LONG = 3

function run(work: Work): Found[] {
  return work.entries.cuts.flatMap(({ index, id, at }): Found[] => {
    const fills = work.entries.pours.filter(p => p.value.kind === 'inlay' && p.value.into?.includes(id))
    const first = fills[0]
    const depth = work.stack.cuts[index]!.day
    // Two fills are what is asked for; a seal of its own keeps the first from drawing air out of the timber.
    if (first === undefined || fills.length > 1 || depth === null) return []
    const width = widthOf(work, index)
    if (width === null) return []
    const density = work.materials.resins[first.index]!.densityGMl * 1000
    const limit = width.stroke ? STROKE_MM : holdsBubbleBelowMm(density)
    if (width.mm >= limit || depth <= width.mm) return []
    return [
      {
        severity: 'caution',
        at,
        says: `${id} is ${decimals(width.mm, 1)} mm wide at its widest and ${decimals(depth, 1)} mm deep: under ${decimals(limit, 1)} mm surface tension holds the air that ${first.id} shuts in, and it shows as pinholes. Seal it first, fill it in two goes and a skim, with a fine nozzle from the bottom up; or flood the face and take it off again.`,
        value: width.mm,
        unit: 'mm',
        limit,
        basis: width.stroke
          ? 'strokes narrower than 3 mm and deeper than wide: reports of makers, common practice'
          : 'a bubble does not rise in a round hole under 3.6 mm: Bretherton 1961 (memory), surface tension of liquid epoxy 42 mN/m',
        settledBy: 'one letter in an offcut, filled alike and sanded',
        ...twoFills(work, first.index)
      }
    ]
  })
}

// Widest place of a cut, mm, and whether it is a stroke.
function widthOf(work: Work, index: number): { readonly mm: number; readonly stroke: boolean } | null {
  const { geometry } = work.stack
  const { width } = work.piece.cuts[index]!
  if (geometry.cutLines[index] !== null) return width === undefined ? null : { mm: width, stroke: true }
  const region = geometry.cutRegions[index]
  if (region === null || region === undefined || region.rings.length === 0) return null
  const mm = 2 * inradius(region, 0.05).radiusMm
  const { minX, maxX, minY, maxY } = bounds(region)
  return { mm, stroke: Math.max(maxX - minX, maxY - minY) > LONG * mm }
}

// The same fill twice, the first to half the depth. Not where the order or the amount is the maker's own.
function twoFills(work: Work, pour: number): Pick<Found, 'fix' | 'fixSays'> {
  const { at, id, value } = work.entries.pours[pour]!
  if (work.piece.steps !== undefined || value.fill === undefined) return {}
  const typed = (work.document.pours ?? [])[pour] as unknown as Record<string, unknown>
  const { id: _id, fill: _fill, ...same } = typed
  const depth = Number((work.stack.pours[pour]!.depth / 2).toFixed(1))
  if (depth < 0.1) return {}
  return {
    fix: [{ op: 'add', path: at, value: { ...same, id: `${id.slice(0, 50)} first`, depth } }],
    fixSays: `Fill in two goes, ${decimals(depth, 1)} mm first`
  }
}
