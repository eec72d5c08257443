import type { Work } from '../findings/work.ts'
import { area, bounds, centroid, perimeter } from '../shape/measure.ts'
import type { CoreModel } from './core-model.ts'
import type { FaceImage } from './face-image.ts'
import { faceImage, pixelFor, variesOnPlan } from './face-image.ts'
import type { Sheet } from './mark.ts'
import type { PageView } from './page-data.ts'
import type { PlacedPicture } from './picture-mark.ts'
import { planView } from './plan-view.ts'
import type { RoundHole, SectionPart } from './section.ts'
import { sectionSheet } from './section.ts'
import type { SectionPath } from './section-cut.ts'
import { sectionOf } from './section-cut.ts'
import { sectionPathOf } from './section-path.ts'
import { SIDES, STRETCH, sectionPlace } from './section-place.ts'

/** The drawings of one width: both faces, and the section true and stretched, aligned under the front. */
export interface SheetViews {
  readonly id: PageView['id']
  readonly front: Sheet
  readonly back: Sheet
  readonly sectionTrue: Sheet
  readonly sectionStretched: Sheet
  readonly views: readonly PageView[]
  /** Whether the line of the section steps, and whether it runs across the plan instead of along it. */
  readonly stepped: boolean
  readonly across: boolean
  /** Scale of the section against the plan's: a section across is not tied to the plan over it. */
  readonly enlarged: number
}

/** Widths on the page: beside the card, and on a phone held upright, mm (a quarter rem each). */
const WIDTHS = { wide: 166, narrow: 88 } as const
const MOST_HEIGHT = { wide: 104, narrow: 96 } as const

/** One face at one width, without the line of a section: what a screen shows at a time. */
export function faceView(
  work: Work,
  model: CoreModel,
  id: PageView['id'],
  face: PageView['face']
): { readonly sheet: Sheet; readonly view: PageView } {
  const widthMm = WIDTHS[id]
  const sizes = { widthMm, sideMm: SIDES[id], mostHeightMm: MOST_HEIGHT[id], few: id === 'narrow' }
  const { sheet, view } = planView(work, model, { ...sizes, face, path: null })
  const { scale, originX, originY } = view
  return { sheet, view: { id, face, scale, originX, originY, widthMm, heightMm: sheet.heightMm } }
}

/** Gives a picture an address that a drawing can carry. */
export type Addressed = (image: FaceImage) => string

/** Most pixels of a picture on the page: as fine as its drawing is shown. */
const PICTURE_PIXELS = 120_000
const LEAST_PIXEL_MM = 0.5

/** Colours where heights vary over the plan of a piece, to lay on its drawing; null where none do. */
export function imageFor(model: CoreModel, face: PageView['face']): FaceImage | null {
  if (!variesOnPlan(model)) return null
  const pixelMm = pixelFor(bounds(model.geometry.outline), PICTURE_PIXELS, LEAST_PIXEL_MM)
  return faceImage(model, { face, pixelMm, varyingOnly: true })
}

function pictureOf(
  model: CoreModel,
  face: PageView['face'],
  address: Addressed | undefined
): PlacedPicture | null {
  const image = address === undefined ? null : imageFor(model, face)
  return image === null ? null : { href: address!(image), box: image.box }
}

/** Draws a piece at both widths. Without `address` colours are those of level parts alone. */
export function sheetViews(work: Work, model: CoreModel, address?: Addressed): SheetViews[] {
  const pictures = {
    front: pictureOf(model, 'front', address),
    back: pictureOf(model, 'back', address)
  }
  const path = sectionPathOf(work)
  const parts = partsOn(path, work)
  const rounds = roundsOn(path, work)
  return (['wide', 'narrow'] as const).map((id): SheetViews => {
    const widthMm = WIDTHS[id]
    const common = { widthMm, sideMm: SIDES[id], mostHeightMm: MOST_HEIGHT[id], few: id === 'narrow' }
    const front = planView(work, model, { ...common, face: 'front', path, picture: pictures.front })
    const back = planView(work, model, { ...common, face: 'back', path: null, picture: pictures.back })
    const across = path.along === 'y'
    const { enlarged, scale, originX } = sectionPlace(path, { ...front.view, id, widthMm })
    const section = sectionOf(model, path, 0.3 / scale)
    const drawn = (stretch: number) =>
      sectionSheet(model, section, {
        scale,
        stretch,
        originX,
        widthMm,
        parts: id === 'wide' ? parts : [],
        rounds
      })
    return {
      id,
      front: front.sheet,
      back: back.sheet,
      sectionTrue: drawn(1),
      sectionStretched: drawn(STRETCH),
      stepped: path.legs.length > 1,
      across,
      enlarged,
      views: [front, back].map(v => ({
        id,
        face: v === front ? ('front' as const) : ('back' as const),
        scale: v.view.scale,
        originX: v.view.originX,
        originY: v.view.originY,
        heightMm: v.sheet.heightMm,
        widthMm
      }))
    }
  })
}

/** How far off its middle a part still counts as met by the section, mm. */
const NEAR_MM = 1

/** The place along the section of a place that it meets within NEAR_MM, mm; else null. */
function metAt(path: SectionPath, x: number, y: number): number | null {
  const [s, aside] = path.along === 'x' ? [x, y] : [y, x]
  const leg = path.legs.find(l => s >= l.from && s <= l.to)
  return leg === undefined || Math.abs(leg.at - aside) > NEAR_MM ? null : s
}

export function partsOn(path: SectionPath, work: Work): SectionPart[] {
  return work.fits.flatMap((fit, i): SectionPart[] => {
    const entry = work.entries.hardware[i]!
    const at = metAt(path, fit.x, fit.y)
    if (fit.part === null || at === null) return []
    const turned = Math.abs(Math.cos((entry.value.turn * Math.PI) / 180)) < 0.5 !== (path.along === 'y')
    return [
      {
        name: entry.id,
        at,
        widthMm: turned ? fit.part.widthMm : fit.part.lengthMm,
        depthMm: fit.part.depthMm,
        face: entry.value.face,
        round: fit.part.shape === 'round'
      }
    ]
  })
}

/** Share of its isoperimetric area (4πA/P²) from which a hole counts as round. */
const ROUND = 0.998

export function roundsOn(path: SectionPath, work: Work): RoundHole[] {
  const { geometry } = work.stack
  const holes = [...geometry.cutRegions, ...geometry.formers.map(f => f.region)]
  return holes.flatMap((region): RoundHole[] => {
    if (region === null || region.rings.length !== 1) return []
    const a = area(region)
    if ((4 * Math.PI * a) / perimeter(region) ** 2 < ROUND) return []
    const c = centroid(region)
    const at = metAt(path, c.x, c.y)
    if (at === null) return []
    const b = bounds(region)
    return [{ at, diameterMm: b.maxX - b.minX }]
  })
}
