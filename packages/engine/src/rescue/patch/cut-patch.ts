import { typedAt } from '../../findings/fix.ts'
import type { Work } from '../../findings/work.ts'
import type { Operation } from '../../piece/patch.ts'
import type { Face, PieceDocument } from '../../piece/piece-schema.ts'
import { MOST_RATIO_ERROR } from '../../resin/batch.ts'
import { otherFace } from '../../steps/step.ts'
import type { PourDocument } from './pour-patch.ts'
import { freeName, tenth } from './pour-patch.ts'

export type CutDocument = NonNullable<PieceDocument['cuts']>[number]

/** The face that is up while it is cast. */
export function topFace(work: Work): Face {
  return otherFace(work.piece.down)
}

/** The patch that takes more, or with a minus less, off a face when it is flattened. */
export function flattenMore(work: Work, face: Face, mm: number): Operation[] {
  const now = work.piece.flatten[face]
  const value = tenth(Math.max(0, now + mm))
  const { document } = work
  const step =
    document.steps?.findIndex(s => s.do === 'flatten' && s.face === face && s.by !== undefined) ?? -1
  const out: Operation[] =
    document.flatten === undefined
      ? [{ op: 'add', path: '/flatten', value: { [face]: value } }]
      : [
          {
            op: typedAt(document, `/flatten/${face}`) === undefined ? 'add' : 'replace',
            path: `/flatten/${face}`,
            value
          }
        ]
  if (step < 0) return out
  const by = work.steps[step]!.byMm ?? 0
  return [...out, { op: 'replace', path: `/steps/${step}/by`, value: tenth(Math.max(0, by + mm)) }]
}

/** The same off both faces. */
export function flattenBoth(work: Work, mm: number): Operation[] {
  const first = flattenMore(work, 'back', mm)
  const second = flattenMore(work, 'front', mm)
  // The first has made the entry: the second goes into it.
  return work.document.flatten === undefined
    ? [
        ...first,
        { op: 'add', path: '/flatten/front', value: tenth(work.piece.flatten.front + mm) },
        ...second.slice(1)
      ]
    : [...first, ...second]
}

/** Mixed at least, g: less is not stirred well in a cup (practice). */
const LEAST_MIX_G = 60
/** Steps of the scale for the smaller part, off ratio by 2.5 % at half a step: half of what is harmless; and its share of the mix, 4 : 1 (practice). */
const LEAST_STEPS = 1 / MOST_RATIO_ERROR
const SMALLER_SHARE = 0.2

/** A cut and the inlay that fills it, put at the end of their lists. No less is mixed than keeps its ratio. */
export function filledCut(
  work: Work,
  cut: CutDocument & { readonly id: string },
  resin: PourDocument
): Operation[] {
  const fill = {
    ...resin,
    id: freeName(work, `${cut.id} filling`),
    kind: 'inlay',
    into: [cut.id],
    mixed: leastMix(work),
    fill: 'cut'
  }
  return [...addCut(work, cut), { op: 'add', path: '/pours/-', value: fill }]
}

/** Least mix of a small filling, g: its smaller part is weighed well enough to keep the ratio. */
export function leastMix({ shop }: Pick<Work, 'shop'>): number {
  return Math.max(LEAST_MIX_G, Math.ceil((LEAST_STEPS * shop.scale.resolution) / SMALLER_SHARE - 1e-9))
}

/** A cut put at the end of the list. */
export function addCut(work: Work, cut: CutDocument): Operation[] {
  return work.document.cuts === undefined
    ? [{ op: 'add', path: '/cuts', value: [cut] }]
    : [{ op: 'add', path: '/cuts/-', value: cut }]
}

/** Depth of a flood that closes a face, mm (practice: what runs out by itself). */
export const FLOOD_MM = 1.5
/** A dam stands over its flood by this, mm (practice). */
const DAM_OVER_MM = 3

/** The patch that puts a flood over a face: at the end of the list, its step in the usual order. */
export function floodOver(work: Work, face: Face, depthMm: number, resin: PourDocument): Operation[] {
  const flood = {
    ...resin,
    id: freeName(work, `${face} flood`),
    kind: 'flood',
    face,
    depth: tenth(depthMm),
    dam: tenth(depthMm + DAM_OVER_MM)
  }
  return [{ op: 'add', path: '/pours/-', value: flood }]
}
