import type { ShownUnits } from '../quantity/shown-units.ts'
import { lengthIn } from '../quantity/shown-units.ts'
import type { CoreModel } from './core-model.ts'
import { corePartsAt, drawingOf, frontUp } from './core-model.ts'
import { chain, dimension } from './dimension.ts'
import type { Hatch, Mark, Sheet } from './mark.ts'
import { box, CAPTION_MM, line, text, textWidthMm } from './mark.ts'
import type { SectionColumn } from './section-column.ts'
import type { Section } from './section-cut.ts'

/** Hardware met by the section, on the plan and across it, mm. */
export interface SectionPart {
  readonly name: string
  /** Middle along the section, extent along it, and depth from its face. */
  readonly at: number
  readonly widthMm: number
  readonly depthMm: number
  readonly face: 'front' | 'back'
  /** Whether its outline is round: a figure then carries Ø. */
  readonly round: boolean
}

/** A round hole met through its middle. */
export interface RoundHole {
  readonly at: number
  readonly diameterMm: number
}

export interface SectionOptions {
  /** Millimetres on the sheet for one of the piece, along the section. */
  readonly scale: number
  /** Factor on heights: 1 is true. */
  readonly stretch: number
  /** Place on the sheet of the section's coordinate 0, and width of the sheet, mm. */
  readonly originX: number
  readonly widthMm: number
  readonly parts: readonly SectionPart[]
  readonly rounds: readonly RoundHole[]
  /** Without dimensions: what a small sheet has no room for. */
  readonly bare?: boolean
}

const ABOVE_MM = 8.5
const ABOVE_PLAIN_MM = 5
const BELOW_MM = 10.5
const DIMENSION_OFF = 6.5
/** Timber cut within this angle of its grain is drawn along it, degrees. */
const ALONG_DEG = 45

/**
 * The section as a sheet: areas hatched by material, front at the top, hardware in place as chain line with two
 * dots, lengths below and heights beside, finished. Ø stands before what is round.
 */
export function sectionSheet(model: CoreModel, section: Section, options: SectionOptions): Sheet {
  const { scale, stretch, originX, widthMm, bare } = options
  const thick = model.finishedHigh - model.finishedLow
  const foot = bare ? 2 : BELOW_MM
  const calls = bare ? [] : callouts(model.shown, options)
  const above = calls.length > 0 ? ABOVE_MM + 4.2 * Math.max(...calls.map(c => c.row)) : ABOVE_PLAIN_MM
  const heightMm = foot + thick * scale * stretch + above
  const up = frontUp(model)
  const x = (s: number) => originX + s * scale
  const y = (z: number) => foot + (up ? z - model.finishedLow : model.finishedHigh - z) * scale * stretch
  const marks: Mark[] = []
  const solid: Mark[] = []
  const put = (points: Float64Array) => {
    const out = new Float64Array(points.length)
    for (let k = 0; k < out.length; k += 2) {
      out[k] = x(points[k]!)
      out[k + 1] = y(points[k + 1]!)
    }
    return out
  }
  const edges: Float64Array[] = section.walls.map(w => put(Float64Array.of(w.at, w.from, w.at, w.to)))
  for (const area of section.areas) {
    const ring = put(area.ring)
    if (area.material === null)
      marks.push({ kind: 'region', rings: [ring], paint: 'paper', hatch: { kind: 'dots' }, edge: null })
    else {
      const drawing = drawingOf(model, area.material)
      const hatch =
        area.material.kind === 'timber' ? timberHatch(model, section, area.material.index) : drawing.hatch
      solid.push({ kind: 'region', rings: [ring], paint: drawing.paint, hatch, edge: null, bleeds: true })
      edges.push(put(area.low), put(area.high))
    }
  }
  marks.push(
    ...solid,
    { kind: 'path', ink: 'outline', lines: edges },
    ...steps(section, x, foot, foot + thick * scale * stretch)
  )
  marks.push(...hardware(model, options, x, y))
  if (bare) return { widthMm, heightMm, marks }
  const top = foot + thick * scale * stretch
  for (const c of calls) {
    const ty = top + 4 + 4.2 * c.row
    marks.push(
      text([c.textX, ty], c.words, { lettering: 'caption', heightMm: CAPTION_MM }),
      line('dimension', [c.x, top + 1.2], [c.x, ty - 0.9])
    )
  }
  marks.push(...lengths(model, section, options, x, foot))
  marks.push(...heights(model, section, x, y))
  return { widthMm, heightMm, marks }
}

function timberHatch(model: CoreModel, section: Section, index: number): Hatch {
  const grain = (((model.grainDeg[index]! % 180) + 180) % 180) - (section.path.along === 'x' ? 0 : 90)
  const off = Math.min(Math.abs(grain), Math.abs(180 - grain))
  return { kind: off <= ALONG_DEG ? 'along' : 'across', seed: index }
}

// A thin line with a word where the cutting line steps to another leg.
function steps(section: Section, x: (s: number) => number, foot: number, top: number): Mark[] {
  return section.path.legs
    .slice(1)
    .map(leg => line('axis', [x(leg.from), foot - 1.5], [x(leg.from), top + 1.5]))
}

function hardware(
  model: CoreModel,
  { parts, scale, stretch }: SectionOptions,
  x: (s: number) => number,
  y: (z: number) => number
): Mark[] {
  const up = frontUp(model)
  return parts.flatMap((p): Mark[] => {
    const face = (p.face === 'front') === up ? model.finishedHigh : model.finishedLow
    const y0 = y(face)
    const y1 = y0 + (p.face === 'front' ? -1 : 1) * p.depthMm * scale * stretch
    const half = (p.widthMm / 2) * scale
    return [
      {
        kind: 'path',
        ink: 'hardware',
        lines: [box(x(p.at) - half, Math.min(y0, y1), x(p.at) + half, Math.max(y0, y1))],
        closed: true
      },
      line('axis', [x(p.at), Math.min(y0, y1) - 1.5], [x(p.at), Math.max(y0, y1) + 1.5])
    ]
  })
}

interface Callout {
  readonly words: string
  readonly x: number
  readonly textX: number
  readonly row: number
}

// Names over the section, on as many lines as keep them apart.
function callouts(shown: ShownUnits, options: SectionOptions): Callout[] {
  const ends: number[] = []
  const out: Callout[] = []
  const wanted = options.parts
    .map(p => ({
      words: p.round
        ? `${p.name} Ø ${lengthIn(shown, p.widthMm, 1)}`
        : `${p.name} ${lengthIn(shown, p.widthMm, 1)} wide`,
      at: p.at
    }))
    .sort((a, b) => a.at - b.at)
  for (const w of wanted) {
    const wide = textWidthMm(w.words, CAPTION_MM)
    const x = options.originX + w.at * options.scale
    const textX = Math.min(Math.max(0, x - wide / 2), options.widthMm - wide)
    let row = ends.findIndex(end => end + 2 <= textX)
    if (row < 0) row = ends.length
    ends[row] = textX + wide
    out.push({ words: w.words, x, textX, row })
  }
  return out
}

// Lengths under the section: timber, resin and holes in turn.
function lengths(
  model: CoreModel,
  section: Section,
  { rounds, scale }: SectionOptions,
  x: (s: number) => number,
  foot: number
): Mark[] {
  const columns = joined(section.columns, 1.2 / scale)
  if (columns.length === 0) return []
  const stops = [columns[0]!.from, ...columns.map(c => c.to)]
  const words = columns.map(c => {
    const length = c.to - c.from
    const middle = (c.from + c.to) / 2
    if (c.main === null) {
      const round = rounds.find(r => Math.abs(r.at - middle) < 0.5 && Math.abs(r.diameterMm - length) < 0.5)
      return round === undefined
        ? lengthIn(model.shown, length, 0)
        : `Ø ${lengthIn(model.shown, round.diameterMm, 1)}`
    }
    const figure = lengthIn(model.shown, length, 0)
    if (c.main.kind !== 'timber') return figure
    const named = `${figure} ${shortName(model.timbers[c.main.index]!.words)}`
    return textWidthMm(named, 3.5) + 1 <= length * scale ? named : figure
  })
  return chain(stops.map(x), foot, -DIMENSION_OFF, words)
}

/** "ash, white" -> "ash": the word a maker would use. */
function shortName(name: string): string {
  return name.split(/[,(]/)[0]!.trim()
}

// Columns alike and touching are one; slivers thinner than can be drawn go to their neighbour.
function joined(columns: readonly SectionColumn[], leastMm: number): SectionColumn[] {
  const out: SectionColumn[] = []
  for (const c of columns) {
    const last = out[out.length - 1]
    const alike =
      last !== undefined &&
      last.main?.kind === c.main?.kind &&
      (c.main?.kind === 'pour' || last.main?.index === c.main?.index)
    if (last !== undefined && (alike || c.to - c.from < leastMm)) out[out.length - 1] = { ...last, to: c.to }
    else out.push(c)
  }
  return out
}

// Whole thickness on the left; on the right the levels where most layers lie on each other.
function heights(
  model: CoreModel,
  section: Section,
  x: (s: number) => number,
  y: (z: number) => number
): Mark[] {
  const first = section.columns[0]
  const last = section.columns[section.columns.length - 1]
  if (first === undefined || last === undefined) return []
  const thick = model.finishedHigh - model.finishedLow
  const low = Math.min(y(model.finishedLow), y(model.finishedHigh))
  const high = Math.max(y(model.finishedLow), y(model.finishedHigh))
  const out: Mark[] = dimension({
    from: [x(first.from), low],
    to: [x(first.from), high],
    off: -6,
    words: lengthIn(model.shown, thick, 1)
  })
  const right = x(last.to)
  const levels = layerLevels(model, section)
  for (const z of levels) out.push(line('dimension', [right + 0.8, y(z)], [right + 4, y(z)]))
  for (let k = 0; k + 1 < levels.length; k++) {
    const [a, b] = [levels[k]!, levels[k + 1]!]
    if (Math.abs(y(b) - y(a)) < 2.8) continue
    out.push(text([right + 4.8, (y(a) + y(b)) / 2 - 1.2], lengthIn(model.shown, Math.abs(b - a), 1, 1)))
  }
  return out
}

/** Heights between the layers of the column with the most pours, one without a void before one with. */
function layerLevels(model: CoreModel, section: Section): number[] {
  let best: { readonly levels: number[]; readonly rank: number } = { levels: [], rank: 0 }
  for (const c of section.columns) {
    const middle = (c.from + c.to) / 2
    const at = section.path.legs[c.leg]!.at
    const parts = section.path.along === 'x' ? corePartsAt(model, middle, at) : corePartsAt(model, at, middle)
    const pours = parts.filter(p => p.material?.kind === 'pour').length
    const rank = pours - (parts.some(p => p.material === null) ? 0.5 : 0) + (c.to - c.from) * 1e-6
    if (pours > 0 && rank > best.rank)
      best = { levels: [...new Set(parts.flatMap(p => [p.from, p.to]))].sort((p, q) => p - q), rank }
  }
  return best.levels
}
