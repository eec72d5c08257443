import type { Patch } from '../piece/patch.ts'
import type { PieceDocument } from '../piece/piece-schema.ts'
import { InputProblem } from '../piece/problem.ts'
import type { Files } from '../piece/region.ts'
import { freshName, nameOf, takenNames } from './entry-name.ts'
import type { MirrorAxis } from './shape-mirror.ts'
import { shapeMirrored } from './shape-mirror.ts'
import { angleOf, shapeTurned } from './shape-place.ts'
import { splitShape } from './shape-split.ts'
import type { TimberDocument } from './timber-shift.ts'
import { outlines, timberPatch, timberShifted } from './timber-shift.ts'
import { grainOf, measuredMirrored, measuredTurned, partedTop } from './timber-top.ts'

export { liveEdge, liveEdgeTimber } from './live-edge.ts'
export type { MirrorAxis } from './shape-mirror.ts'
export { shapeMirrored } from './shape-mirror.ts'
export { shapeMoved, shapeTurned } from './shape-place.ts'
export type { Handle, ShapeChange } from './shape-resize.ts'
export { HANDLES, handlesOf, shapeResized } from './shape-resize.ts'

/**
 * Timbers as the document holds them, moved, turned, mirrored and parted. Each function returns a patch
 * (RFC 6902) of the document given, or words why not; the document stays as it was. `index` counts from 0.
 */
export type Change =
  | { readonly patch: Patch /** What the maker should know of it. */; readonly says?: readonly string[] }
  | { readonly problem: string }

/** Most timbers of a piece. */
const MOST_TIMBERS = 200

/** Timber `index` moved by (dx, dy), mm. */
export function timberMoved(document: PieceDocument, index: number, dx: number, dy: number): Change {
  return changed(document, index, [dx, dy], timber => timberShifted(timber, dx, dy))
}

/**
 * Timber `index` turned counter-clockwise by `deg` about a place of the plan. Its grain turns with it: where
 * the document leaves the grain to the longer side, it is written down, unless it is turned by quarter turns.
 */
export function timberTurned(
  document: PieceDocument,
  index: number,
  deg: number,
  about: readonly [number, number],
  files: Files = {}
): Change {
  return changed(document, index, [deg, ...about], timber => {
    const quarters = Number.isInteger(deg / 90)
    if (timber.measured !== undefined && !quarters)
      return 'a top measured on a grid lies square to the plan; allowed: quarter turns (90, 180, 270 degrees)'
    const grain = timber.grain ?? (quarters ? null : grainOf(timber, files))
    return {
      ...timber,
      ...outlines(timber, s => shapeTurned(s, deg, about)),
      ...(grain === null ? {} : { grain: angleOf(grain + deg) }),
      ...(timber.crown === undefined
        ? {}
        : { crown: { ...timber.crown, along: angleOf((timber.crown.along ?? 0) + deg) } }),
      ...(timber.measured === undefined ? {} : { measured: measuredTurned(timber.measured, deg, about) })
    }
  })
}

/**
 * Timber `index` mirrored across x = `c` or y = `c`; with `copy`, the timber stays and its mirror image is
 * added with a name of its own, as two leaves of one board are opened like a book.
 */
export function timberMirrored(
  document: PieceDocument,
  index: number,
  axis: MirrorAxis,
  c: number,
  options: { readonly copy?: boolean } = {}
): Change {
  const made = timberAfter(document, index, [c], timber => {
    const outline = shapeMirrored(timber.outline, axis, c)
    const underside = timber.underside === undefined ? undefined : shapeMirrored(timber.underside, axis, c)
    if (outline === null || underside === null)
      return 'an outline from a file cannot be mirrored; make it a polygon first'
    const mirrored = (deg: number) => angleOf(axis === 'x' ? 180 - deg : -deg)
    return {
      ...timber,
      outline,
      ...(underside === undefined ? {} : { underside }),
      ...(timber.grain === undefined ? {} : { grain: mirrored(timber.grain) }),
      ...(timber.crown === undefined
        ? {}
        : { crown: { ...timber.crown, along: mirrored(timber.crown.along ?? 0) } }),
      ...(timber.measured === undefined ? {} : { measured: measuredMirrored(timber.measured, axis, c) })
    }
  })
  if ('problem' in made) return made
  if (!options.copy) return { patch: timberPatch(made.before, made.after, index) }
  if (document.timbers!.length >= MOST_TIMBERS) return { problem: tooMany }
  const id = freshName(takenNames(document), nameOf('timbers', made.before, index))
  return { patch: [{ op: 'add', path: '/timbers/-', value: { ...made.after, id } }] }
}

const tooMany = `${MOST_TIMBERS} timbers already; allowed: at most ${MOST_TIMBERS}`

/**
 * Timber `index` parted along the straight line through two places of the plan, into two timbers with names of
 * their own; `kerfMm` is what the saw takes, half on either side. The first keeps the place in the list, the
 * second comes last, so that timbers without a name keep theirs; steps that named the timber name both.
 */
export function timberSplit(
  document: PieceDocument,
  index: number,
  line: readonly [readonly [number, number], readonly [number, number]],
  files: Files = {},
  kerfMm = 0
): Change {
  const timber = document.timbers?.[index]
  if (timber === undefined) return { problem: `no timber ${index + 1} in this piece` }
  if (document.timbers!.length >= MOST_TIMBERS) return { problem: tooMany }
  const outline = splitShape(timber.outline, line, kerfMm, files)
  if ('problem' in outline) return outline
  const under = timber.underside === undefined ? null : splitShape(timber.underside, line, kerfMm, files)
  if (under !== null && 'problem' in under) return { problem: `the underside: ${under.problem}` }
  const grain = timber.grain === undefined ? { grain: grainOf(timber, files) } : {}
  const [[ax, ay], [bx, by]] = line
  const kept = partedTop(timber, [bx - ax, by - ay])
  const name = nameOf('timbers', timber, index)
  const taken = takenNames(document)
  const parts = ([0, 1] as const).map(
    (k): TimberDocument => ({
      ...kept.timber,
      ...grain,
      id: freshName(taken, `${name.slice(0, 56)} ${'ab'[k]}`),
      outline: outline.parts[k],
      ...(under === null ? {} : { underside: under.parts[k] })
    })
  )
  const steps = document.steps?.flatMap(step =>
    'what' in step && step.what === name && step.do.endsWith(' timber')
      ? parts.map(part => ({ ...step, what: part.id! }))
      : [step]
  )
  const patch: Patch = [
    { op: 'replace', path: `/timbers/${index}`, value: parts[0] },
    { op: 'add', path: '/timbers/-', value: parts[1] },
    ...(steps === undefined || steps.length === document.steps!.length
      ? []
      : [{ op: 'replace' as const, path: '/steps', value: steps }])
  ]
  return kept.says.length === 0 ? { patch } : { patch, says: kept.says }
}

type Made = { readonly before: TimberDocument; readonly after: TimberDocument } | { readonly problem: string }

function timberAfter(
  document: PieceDocument,
  index: number,
  numbers: readonly number[],
  change: (timber: TimberDocument) => TimberDocument | string
): Made {
  const before = document.timbers?.[index]
  if (before === undefined) return { problem: `no timber ${index + 1} in this piece` }
  const wrong = numbers.find(n => !(Math.abs(n) <= 10_000))
  if (wrong !== undefined) return { problem: `found ${wrong}; allowed: −10000 to 10000` }
  try {
    const after = change(before)
    return typeof after === 'string' ? { problem: after } : { before, after }
  } catch (e) {
    if (e instanceof InputProblem) return { problem: e.message }
    throw e
  }
}

function changed(
  document: PieceDocument,
  index: number,
  numbers: readonly number[],
  change: (timber: TimberDocument) => TimberDocument | string
): Change {
  const made = timberAfter(document, index, numbers, change)
  return 'problem' in made ? made : { patch: timberPatch(made.before, made.after, index) }
}
