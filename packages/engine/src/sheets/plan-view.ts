import type { Work } from '../findings/work.ts'
import { grainDegOf } from '../piece/grain.ts'
import type { Face } from '../piece/piece-schema.ts'
import type { ShownUnits } from '../quantity/shown-units.ts'
import { lengthIn } from '../quantity/shown-units.ts'
import { circle, rectangle } from '../shape/build.ts'
import { union } from '../shape/combine.ts'
import { area, bounds, centroid } from '../shape/measure.ts'
import { offset } from '../shape/offset.ts'
import type { Region } from '../shape/region.ts'
import { rotate } from '../shape/transform.ts'
import { removalPlan } from '../stack/event.ts'
import { figureLines } from '../stack/figure-lines.ts'
import type { CoreModel } from './core-model.ts'
import { cuttingPlane } from './cutting-plane.ts'
import { chain, dimension } from './dimension.ts'
import { grainLines } from './grain.ts'
import type { Mark, Paint, Sheet } from './mark.ts'
import { line, text } from './mark.ts'
import type { PlacedPicture } from './picture-mark.ts'
import { pictureMark } from './picture-mark.ts'
import type { PlanPart } from './plan-parts.ts'
import { planParts } from './plan-parts.ts'
import type { SectionPath } from './section-cut.ts'
import { stoneMarks } from './stone-view.ts'
import type { View } from './view.ts'
import { fitted, linesOnSheet, onSheet, regionOnSheet } from './view.ts'

export interface PlanViewOptions {
  readonly face: Face
  readonly widthMm: number
  /** Most height the piece itself may take on the sheet, mm. */
  readonly mostHeightMm: number
  /** Left and right of the piece, for dimensions and letters, mm. */
  readonly sideMm: number
  /** The line of the section A-A, drawn on the front. */
  readonly path: SectionPath | null
  /** A small sheet carries the whole sizes only. */
  readonly few?: boolean
  /** No sizes at all: a picture of the piece. */
  readonly bare?: boolean
  /** Colours where heights vary over the plan, laid over the plain ones. */
  readonly picture?: PlacedPicture | null
}

/** A plan and how the piece lies on it. */
export interface PlanView {
  readonly sheet: Sheet
  readonly view: View
}

const ABOVE_MM = 11
const BELOW_MM = 11.5
const BELOW_FEW_MM = 4
const OFF_MM = 6
/** Round a picture without sizes. */
const BARE_MM = 0.5

/**
 * A face of the finished piece to scale: timbers with a calm figure, resin in the colour a core gives, cuts of
 * this face as edges, those of the other dashed, hardware as chain line with two dots, scales with their
 * figures, the line of the section, whole sizes and places. The back is seen from behind: left and right change
 * places, as when the piece is turned over left to right.
 */
export function planView(work: Work, model: CoreModel, options: PlanViewOptions): PlanView {
  const { face, widthMm, sideMm, path, few } = options
  const outline = work.stack.geometry.outline
  const box = bounds(outline)
  const foot = options.bare ? BARE_MM : few ? BELOW_FEW_MM : BELOW_MM
  const view = fitted(
    box,
    { widthMm: widthMm - 2 * sideMm, heightMm: options.mostHeightMm, left: sideMm, foot },
    face === 'back'
  )
  const top = foot + (box.maxY - box.minY) * view.scale
  const parts = planParts(work, model, face)
  const marks: Mark[] = [
    ...surface(work, parts, view, options.picture ?? null),
    { kind: 'group', name: 'stones', marks: stoneMarks(work, model, parts, view, face) },
    // Over materials, which keep their colours, lines keep theirs.
    {
      kind: 'group',
      name: 'on-face',
      marks: [
        ...cuts(work, view, face),
        ...edges(work, view, face),
        ...markings(work, model, view, face),
        ...hardware(work, view, face)
      ]
    },
    ...formers(work, view),
    { kind: 'region', rings: regionOnSheet(view, outline), paint: null, hatch: null, edge: 'outline' }
  ]
  if (path !== null && face === 'front') marks.push(...cuttingPlane(path, view))
  if (options.bare) return { sheet: { widthMm, heightMm: top + BARE_MM, marks }, view }
  marks.push(...dimensions(work, model.shown, view, face, few ?? false))
  return { sheet: { widthMm, heightMm: top + ABOVE_MM, marks }, view }
}

// Colours first, then the grain over them; what varies lies between the two, in a group of its own.
function surface(work: Work, parts: readonly PlanPart[], view: View, picture: PlacedPicture | null): Mark[] {
  const out: Mark[] = []
  const faces = new Map<number, Region[]>()
  for (const part of parts) {
    const rings = regionOnSheet(view, part.region)
    if (part.top === null)
      out.push({ kind: 'region', rings, paint: 'paper', hatch: { kind: 'dots' }, edge: null })
    else out.push({ kind: 'region', rings, paint: part.colour, hatch: null, edge: null, bleeds: true })
    if (part.top?.kind === 'timber') {
      const known = faces.get(part.top.index)
      if (known === undefined) faces.set(part.top.index, [part.region])
      else known.push(part.region)
    }
  }
  out.push({
    kind: 'group',
    name: 'picture',
    marks: picture === null ? [] : [pictureMark(view, picture)]
  })
  for (const [index, regions] of faces) {
    const timber = work.piece.timbers[index]!
    const grain = grainDegOf(timber, work.stack.geometry.timbers[index]!.upper)
    const angle = view.mirrored ? 180 - grain : grain
    const region = union(...regions)
    const lines =
      region.rings.length === 0 ? [] : grainLines(regionOnSheet(view, region), angle, timber.rings, index + 1)
    out.push({ kind: 'path', ink: 'grain', lines })
  }
  return out
}

// Cuts of this face as edges over a light shade; those of the other face dashed.
function cuts(work: Work, view: View, face: Face): Mark[] {
  const { stack, piece } = work
  const out: Mark[] = []
  const hidden: Mark[] = []
  for (const e of stack.events) {
    if (e.kind !== 'cut') continue
    const cut = piece.cuts[e.index]!
    if (cut.kind === 'outline') continue
    const filled = stack.events.some(
      f =>
        f.kind === 'fill' &&
        f.removals.some(
          r => r.floor === e.removal.floor && r.region === e.removal.region && r.lines === e.removal.lines
        )
    )
    const rings = regionOnSheet(view, removalPlan(e.removal, stack.cuts[e.index]!.faceZ))
    if (cut.face !== face && !cut.through)
      hidden.push(
        { kind: 'path', ink: 'halo', lines: rings, closed: true },
        { kind: 'path', ink: 'hidden', lines: rings, closed: true }
      )
    else if (filled) out.push({ kind: 'path', ink: 'edge', lines: rings, closed: true })
    else
      out.push({ kind: 'region', rings, paint: cut.through ? null : 'recess', hatch: null, edge: 'outline' })
  }
  return [...hidden, ...out]
}

function formers(work: Work, view: View): Mark[] {
  return work.stack.geometry.formers.map(
    (f): Mark => ({ kind: 'path', ink: 'outline', lines: regionOnSheet(view, f.region), closed: true })
  )
}

// Where a chamfer or a rounding ends on the face.
function edges(work: Work, view: View, face: Face): Mark[] {
  return work.piece.edges
    .filter(e => e.face === face || e.face === 'both')
    .map((e): Mark => {
      const inner = offset(work.stack.geometry.outline, -e.size, { join: 'round', tolMm: 0.05 })
      return { kind: 'path', ink: 'edge', lines: regionOnSheet(view, inner), closed: true }
    })
}

function markings(work: Work, model: CoreModel, view: View, face: Face): Mark[] {
  return work.entries.markings.flatMap(({ value, index }): Mark[] => {
    if (value.face !== face) return []
    const drawing = model.markings[index]!
    const paint: Paint =
      value.filled === undefined ? 'dark' : drawing.paint === 'clear' ? 'dark' : drawing.paint
    return [
      {
        kind: 'path',
        ink: 'outline',
        lines: linesOnSheet(view, [...work.stack.geometry.markingLines[index]!, ...figureLines(value)]),
        widthMm: Math.max(0.18, value.width * view.scale),
        paint
      },
      // Outlines are drawn as the type they come from.
      ...(value.figures === 'outline' ? value.numerals : []).map((n): Mark => {
        const height = n.height * view.scale * 1.4
        const [x, y] = onSheet(view, n.at[0], n.at[1])
        return text([x, y - 0.34 * height], n.text, {
          lettering: 'numeral',
          heightMm: height,
          anchor: 'middle',
          strong: true,
          paint
        })
      })
    ]
  })
}

function hardware(work: Work, view: View, face: Face): Mark[] {
  return work.fits.flatMap((fit, i): Mark[] => {
    const h = work.entries.hardware[i]!.value
    if (fit.part === null || (h.at === undefined && h.in === undefined)) return []
    const { part, x, y } = fit
    const outline =
      part.shape === 'round'
        ? circle(part.widthMm, 0.02, x, y)
        : rotate(rectangle(part.lengthMm, part.widthMm, 0, 0.02, x, y), h.turn, x, y)
    const lines = regionOnSheet(view, outline)
    if (h.face !== face) return [{ kind: 'path', ink: 'hidden', lines, closed: true }]
    const [cx, cy] = onSheet(view, x, y)
    const reach = (Math.min(part.lengthMm, part.widthMm) / 2) * view.scale + 1.6
    const cross: Mark[] =
      part.shape === 'round'
        ? [line('axis', [cx - reach, cy], [cx + reach, cy]), line('axis', [cx, cy - reach], [cx, cy + reach])]
        : []
    return [{ kind: 'path', ink: 'hardware', lines, closed: true }, ...cross]
  })
}

function dimensions(work: Work, shown: ShownUnits, view: View, face: Face, few: boolean): Mark[] {
  const box = bounds(work.stack.geometry.outline)
  const [x0, y0] = onSheet(view, face === 'back' ? box.maxX : box.minX, box.minY)
  const [x1, y1] = onSheet(view, face === 'back' ? box.minX : box.maxX, box.maxY)
  const out: Mark[] = [
    ...dimension({
      from: [x0, y1],
      to: [x1, y1],
      off: OFF_MM,
      words: lengthIn(shown, box.maxX - box.minX, 1)
    }),
    ...dimension({
      from: [x0, y0],
      to: [x0, y1],
      off: few ? -OFF_MM : -OFF_MM - 5,
      words: lengthIn(shown, box.maxY - box.minY, 1)
    })
  ]
  if (few) return out
  const places = keyPlaces(work, face, 9 / view.scale)
  if (places.length === 0) return out
  const stops = [face === 'back' ? -box.maxX : box.minX, ...places, face === 'back' ? -box.minX : box.maxX]
  const words = stops.slice(1).map((s, i) => lengthIn(shown, s - stops[i]!, 1))
  return [
    ...out,
    ...chain(
      stops.map(s => view.originX + s * view.scale),
      y0,
      -OFF_MM,
      words
    )
  ]
}

/** Middles worth a dimension, from left to right as seen, none nearer than can be read. */
function keyPlaces(work: Work, face: Face, least: number): number[] {
  const box = bounds(work.stack.geometry.outline)
  const found: number[] = []
  const add = (x: number) => {
    const seen = face === 'back' ? -x : x
    const ends = face === 'back' ? [-box.maxX, -box.minX] : [box.minX, box.maxX]
    if ([...found, ...ends].every(f => Math.abs(f - seen) >= least)) found.push(seen)
  }
  work.fits.forEach((fit, i) => {
    const h = work.entries.hardware[i]!.value
    if (h.face === face && (h.at !== undefined || h.in !== undefined)) add(fit.x)
  })
  for (const f of work.stack.geometry.formers) add(centroid(f.region).x)
  work.entries.cuts.forEach((c, i) => {
    const region = work.stack.geometry.cutRegions[i]
    if (
      c.value.face === face &&
      c.value.kind !== 'outline' &&
      region &&
      region.rings.length === 1 &&
      area(region) > 0
    )
      add(centroid(region).x)
  })
  return found.slice(0, 5).sort((a, b) => a - b)
}
