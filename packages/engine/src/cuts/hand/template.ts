import type { Lengths } from '../../piece/lengths.ts'
import { lengthsOf } from '../../piece/lengths.ts'
import type { Face } from '../../piece/piece-schema.ts'
import { decimals } from '../../quantity/format.ts'
import { bounds } from '../../shape/measure.ts'
import type { Bounds, Region } from '../../shape/region.ts'
import { EMPTY } from '../../shape/region.ts'
import { mirrorX, mirrorY } from '../../shape/transform.ts'
import { openingOf, slotsOf } from './bush.ts'
import type { HandCut } from './hand-cut.ts'
import type { HandParts } from './hand-work.ts'
import { jobOf, openingKey } from './hand-work.ts'
import type { Round } from './plan-form.ts'
import { roundsOf } from './plan-form.ts'
import { turnsOf, turnWords } from './turned.ts'

/**
 * What is laid on the work 1:1, seen as the work lies with its face up. mm.
 *
 * - opening, slot   cut out of template board; the bush runs in it
 * - outline         the finished outline, for a bearing or a saw
 * - centres         middles of holes
 * - drawing         what is sent out, in its true size
 * - pins            holes in the bed of the machine, about its zero
 */
export interface Template {
  readonly kind: 'opening' | 'slot' | 'outline' | 'centres' | 'drawing' | 'pins'
  readonly name: string
  readonly face: Face
  /** Cut out along these, and what the bit then cuts. */
  readonly cutOut: Region
  readonly drawn: Region
  readonly lines: readonly Float64Array[]
  readonly holes: readonly Round[]
  /** Where their places are counted from; left out: the near left corner of the edge. */
  readonly from?: { readonly x: number; readonly y: number }
  /** Figures beside the lines, by their middles. */
  readonly figures: readonly {
    readonly text: string
    readonly x: number
    readonly y: number
    readonly heightMm: number
  }[]
  /** The outline of the piece, as it lies. */
  readonly edge: Region
  /** What has to be on the paper. */
  readonly scope: Bounds
  /** Numbers and words beside it. */
  readonly says: readonly string[]
}

/** Room round what is drawn, mm. */
const ROOM_MM = 12

/** Every template and drawing of the work by hand, in the order of the steps; alike openings once. */
export function templatesOf(parts: HandParts, hand: readonly HandCut[]): Template[] {
  const out: Template[] = []
  const known = new Map<string, HandCut[]>()
  for (const h of hand) {
    const key = alike(parts, h)
    const same = key === null ? undefined : known.get(key)
    if (same !== undefined) same.push(h)
    else if (key !== null) known.set(key, [h])
  }
  for (const group of known.values()) {
    const template = templateOf(parts, group)
    if (template !== null) out.push(template)
  }
  return out
}

// Cuts of one key share a sheet: openings of one shape and tool, and all holes drilled into one face.
function alike({ piece }: HandParts, h: HandCut): string | null {
  if (h.way === 'sent out') return `sent ${h.at}`
  if (h.doing === null) return null
  if (h.of === 'cut' && h.way === 'drill') return `centres ${h.face}`
  if ((h.of === 'cut' || h.of === 'marking') && h.way === 'router') {
    const outlined = h.of === 'cut' && piece.cuts[h.index]!.kind === 'outline'
    return outlined ? 'outline' : (openingKey(piece, h) ?? `slot ${h.at}`)
  }
  const outline = h.of === 'trim' || (h.of === 'cut' && piece.cuts[h.index]!.kind === 'outline')
  // Straight sides are marked with a rule, a circle with a trammel.
  return outline && piece.outline.rectangle === undefined && piece.outline.circle === undefined
    ? 'outline'
    : null
}

function templateOf(parts: HandParts, group: readonly HandCut[]): Template | null {
  const { stack, piece, steps } = parts
  const L = lengthsOf(parts.shop)
  const first = group[0]!
  const face = first.face
  const lies = turner(parts, face)
  const edge = lies.region(stack.geometry.outline)
  const name = group.map(h => h.id).join(', ')
  const base = { name, face, cutOut: EMPTY, drawn: EMPTY, lines: [], holes: [], figures: [], edge }
  const job =
    first.of === 'cut' || first.of === 'marking' ? jobOf(parts, steps[first.step]!, first.step) : null
  const outline = first.of === 'trim' || job?.kind === 'outline'
  if (outline && first.way !== 'sent out')
    return {
      ...base,
      kind: 'outline',
      cutOut: edge,
      scope: bounds(edge),
      says: [
        first.way === 'router'
          ? 'The bearing runs on a template of this outline.'
          : `Saw outside the line: leave ${L.of(parts.shop.hand.saw.leave, 1)} ${L.unit}.`
      ]
    }
  if (job === null) return null
  if (first.way === 'sent out') {
    const drawn = job.region === null ? EMPTY : lies.region(job.region)
    const lines = lies.lines(job.lines ?? [])
    const figures = (piece.markings[first.of === 'marking' ? first.index : -1]?.numerals ?? []).map(n => {
      const [x, y] = lies.lines([Float64Array.of(...n.at)])[0]!
      return { text: n.text, x: x!, y: y!, heightMm: n.height }
    })
    const scope = grown(
      unite([
        bounds(drawn),
        boundsOfLines(lines),
        ...figures.map(n => ({
          minX: n.x - n.heightMm,
          minY: n.y - n.heightMm / 2,
          maxX: n.x + n.heightMm,
          maxY: n.y + n.heightMm / 2
        }))
      ]),
      ROOM_MM + job.widthMm / 2
    )
    return {
      ...base,
      kind: 'drawing',
      drawn,
      lines,
      figures,
      scope,
      says: [
        `From the ${face}; ${job.through ? 'right through' : `${L.of(job.depthMm, 2)} deep from the face as it is then`}.`,
        ...(lines.length === 0
          ? []
          : [
              `${lines.length} line${lines.length === 1 ? '' : 's'}, ${L.of(job.widthMm, 2)} wide${job.profile === 'v' ? `, V of ${decimals(job.angleDeg, 0)}°` : ''}${job.figures === 0 ? '' : `; ${job.figures} numerals: ${piece.markings[first.index]!.numerals.map(n => n.text).join(', ')}`}.`
            ]),
        `Lengths hold to ${L.of(parts.shop.machine?.error ?? 0.1, 1)} ${L.unit}; ${placeWords(scope, edge, L)}.`
      ]
    }
  }
  if (first.way === 'drill') {
    const holes = group.flatMap(h => {
      const { region } = jobOf(parts, steps[h.step]!, h.step)
      return region === null ? [] : (roundsOf(lies.region(region)) ?? [])
    })
    const turns = turnWords(turnsOf(edge, holes))
    return {
      ...base,
      kind: 'centres',
      holes,
      scope: grown(unite(holes.map(h => ({ minX: h.x, minY: h.y, maxX: h.x, maxY: h.y }))), 2 * ROOM_MM),
      says: [
        'Each with its size, and how far it is from the left / from the near edge.',
        ...(turns === null ? [] : [turns])
      ]
    }
  }
  const doing = first.doing!
  const offsetMm = doing.offsetMm ?? 0
  const tool = `${doing.tool}; template ${L.of(parts.shop.hand.template, 1)} thick`
  if (job.region === null) {
    const lines = lies.lines(job.lines ?? [])
    // A V runs along the middle: its slot is the bush alone.
    const widthMm = job.profile === 'v' ? 0 : job.widthMm
    const slots = slotsOf(lines, widthMm, offsetMm, job.tolMm)
    const cutOut: Region = { rings: slots.flatMap(s => s.rings) }
    const drawn: Region = {
      rings: job.widthMm > 0 ? slotsOf(lines, job.widthMm, 0, job.tolMm).flatMap(s => s.rings) : []
    }
    const scope = grown(bounds(cutOut), ROOM_MM)
    return {
      ...base,
      kind: 'slot',
      cutOut,
      drawn,
      lines,
      scope,
      says: [
        tool,
        `Slot ${L.of(widthMm + 2 * offsetMm, 1)} wide; ${placeWords(scope, edge, L)}.`,
        `${L.of(job.depthMm, 1)} deep, ${doing.passes!.count} passes.`
      ]
    }
  }
  const drawn = lies.region(job.region)
  const cutOut = openingOf(drawn, offsetMm, job.tolMm)
  const [o, d] = [bounds(cutOut), bounds(drawn)]
  const size = (b: Bounds) => `${L.of(b.maxX - b.minX, 1)} × ${L.of(b.maxY - b.minY, 1)}`
  return {
    ...base,
    kind: 'opening',
    cutOut,
    drawn,
    scope: grown(o, ROOM_MM),
    says: [
      tool,
      `Opening ${size(o)}, cut ${size(d)}: ${L.of(offsetMm, 2)} on each side; corners of the opening ${L.of(doing.openingCornerMm ?? 0, 1)} at least.`,
      `${L.of(job.depthMm, 1)} deep, ${doing.passes!.count} passes.`,
      ...group.map(h => {
        const { region } = jobOf(parts, steps[h.step]!, h.step)
        return `${group.length > 1 ? `${h.id}: ` : ''}${placeWords(bounds(lies.region(region!)), edge, L)}.`
      })
    ]
  }
}

function placeWords(b: Bounds, edge: Region, L: Lengths): string {
  const e = bounds(edge)
  return `middle ${L.of((b.minX + b.maxX) / 2 - e.minX, 1)} from the left, ${L.of((b.minY + b.maxY) / 2 - e.minY, 1)} from the near edge`
}

interface Turner {
  readonly region: (r: Region) => Region
  readonly lines: (lines: readonly Float64Array[]) => readonly Float64Array[]
}

// As it lies with the face up: the back is seen turned over, left staying left unless the pins say otherwise.
function turner({ piece, stack }: HandParts, face: Face): Turner {
  if (face === 'front') return { region: r => r, lines: l => l }
  const b = bounds(stack.geometry.outline)
  const sideways = piece.pins?.about === 'y'
  const [cx, cy] = [(b.minX + b.maxX) / 2, (b.minY + b.maxY) / 2]
  return {
    region: r => (sideways ? mirrorX(r, cx) : mirrorY(r, cy)),
    lines: lines =>
      lines.map(l => l.map((v, k) => (k % 2 === (sideways ? 0 : 1) ? 2 * (sideways ? cx : cy) - v : v)))
  }
}

function grown(b: Bounds, by: number): Bounds {
  return { minX: b.minX - by, minY: b.minY - by, maxX: b.maxX + by, maxY: b.maxY + by }
}

function unite(list: readonly Bounds[]): Bounds {
  return {
    minX: Math.min(...list.map(b => b.minX)),
    minY: Math.min(...list.map(b => b.minY)),
    maxX: Math.max(...list.map(b => b.maxX)),
    maxY: Math.max(...list.map(b => b.maxY))
  }
}

function boundsOfLines(lines: readonly Float64Array[]): Bounds {
  return bounds({ rings: lines })
}
