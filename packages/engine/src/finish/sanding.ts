import type { CoatRecord } from '../catalogue/coat.ts'
import { rubTo } from '../coat/gloss.ts'
import type { Grade } from '../coat/grain.ts'
import { gradeOf, nearestGrade, PASTES } from '../coat/grain.ts'
import type { Ladder, Sanding } from '../coat/ladder.ts'
import { ladderBy, ladderTo } from '../coat/ladder.ts'
import type { Depth, Sanded } from '../coat/scratch.ts'
import { scratchUm } from '../coat/scratch.ts'
import type { Face, Piece } from '../piece/piece-schema.ts'
import type { Shop } from '../piece/shop-schema.ts'
import type { Stack } from '../stack/stack.ts'
import type { Left, Surface } from './marks.ts'
import { marksUm, surfaceOf } from './marks.ts'
import { shownOn } from './shown.ts'

/** What the document says of a face's finish. */
export type FinishDocument = NonNullable<Piece['finish']['both']>

/** How a face is sanded before its coat. */
export interface FaceSanding {
  readonly left: Left
  readonly marksUm: number
  readonly shown: readonly Sanded[]
  readonly ladder: Ladder
  readonly last: Grade
  /** Whether the maker gave all grades. */
  readonly given: boolean
  /** Pastes after the last grade, grain in µm, coarse to fine. */
  readonly pastesUm: readonly number[]
  /** Scratches of the last grade in resin, µm; null where the face shows none. */
  readonly resinScratchUm: Depth | null
  /** Index of the step in which it is sanded; null: just before the coat. */
  readonly step: number | null
}

/** Last grade on timber without a film: beyond it nothing is gained and an oil soaks in less (practice). */
const BARE_TIMBER_GRIT = 240

/** The last grade of a face: the document's, else the coat's; of bare or waxed resin that which the gloss asks for. */
function lastGritOf(
  finish: FinishDocument | undefined,
  coat: CoatRecord | null,
  shown: readonly Sanded[]
): number | null {
  const own = finish?.grits?.[finish.grits.length - 1] ?? finish?.grit
  if (own !== undefined) return own
  const rubbed = coat === null || coat.id === 'wax'
  if (!rubbed) return coat.lastGrit[1]
  if (finish?.gloss !== undefined && shown.includes('resin')) return rubTo(finish.gloss)
  if (coat === null) return null
  return shown.includes('timber') ? BARE_TIMBER_GRIT : coat.lastGrit[1]
}

/** The sanding of a face; null where the document asks for none. */
export function sandingOf(
  stack: Stack,
  shop: Shop,
  face: Face,
  finish: FinishDocument | undefined,
  coat: CoatRecord | null,
  areaM2: number
): FaceSanding | null {
  const shown = shownOn(stack, face)
  const last = lastGritOf(finish, coat, shown)
  if (last === null) return null
  const surface = givenSurface(surfaceOf(stack, shop, face), finish, shop)
  const how = sandingWith(shown, areaM2, shop)
  // A number that is no grade is reckoned as the one it stands next to; a finding says so.
  const grades = finish?.grits?.map(nearestGrade)
  const from = (marks: number) =>
    grades === undefined ? ladderTo(how, marks, nearestGrade(last).grit) : ladderBy(how, marks, once(grades))
  // What a sanding step takes off is taken by all its grades: the first leaves the finer ones their share.
  const whole = from(surface.marksUm)
  const finer = 1000 * whole.offMm - surface.marksUm
  const marks = Math.max(surface.toolUm, surface.marksUm - finer)
  const ladder = surface.marksUm > surface.toolUm ? from(marks) : whole
  const end = ladder.steps[ladder.steps.length - 1]!.grade
  const polished =
    (coat === null || coat.id === 'wax') && finish?.gloss === 'polished' && shown.includes('resin')
  return {
    left: surface.left,
    marksUm: surface.marksUm > surface.toolUm ? marks : surface.marksUm,
    shown,
    ladder,
    last: end,
    given: grades !== undefined,
    pastesUm: polished && end.grit >= rubTo('polished') ? PASTES.map(p => p.grainUm) : [],
    resinScratchUm: shown.includes('resin') ? scratchUm(end.grainUm, 'resin') : null,
    step: surface.step
  }
}

/** Sanding under a flood over a face at step `at`: to the finest grade that a coat which levels itself wants. */
export function sandingUnder(
  stack: Stack,
  shop: Shop,
  face: Face,
  at: number,
  areaM2: number,
  lastGrit: number
): { readonly ladder: Ladder; readonly left: Left; readonly step: number | null } {
  const surface = surfaceOf(stack, shop, face, at)
  const timber = surface.left !== 'poured' && stack.piece.timbers.length > 0
  const how = sandingWith(timber ? ['timber', 'resin'] : ['resin'], areaM2, shop)
  return {
    ladder: ladderTo(how, surface.marksUm, gradeOf(lastGrit).grit),
    left: surface.left,
    step: surface.step
  }
}

function sandingWith(sanded: readonly Sanded[], areaM2: number, shop: Shop): Sanding {
  const { disc, minutes } = shop.sander
  return { sanded, areaM2, discMm: disc, ...(minutes !== undefined && { discMinutes: minutes }) }
}

// The document's word on the last tool stands before ours.
function givenSurface(surface: Surface, finish: FinishDocument | undefined, shop: Shop): Surface {
  if (finish?.from === undefined) return surface
  const toolUm = marksUm(finish.from, shop)
  return { ...surface, left: finish.from, marksUm: toolUm, toolUm }
}

// Two numbers that stand next to one grade are one step.
function once(grades: readonly Grade[]): Grade[] {
  return grades.filter((g, i) => i === 0 || g !== grades[i - 1])
}
