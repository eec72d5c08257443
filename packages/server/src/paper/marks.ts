import type { FaceImage, Ink, Mark, Paint, Sheet, Spot } from '@castwright/engine'
import { hatchLines } from '@castwright/engine'
import { drawPicture } from './picture.ts'
import type { Blackboard } from './printed.ts'
import { POINTS_PER_MM } from './printed.ts'

/** Colour of all lines and letters: that of the sheets. */
export const GRAPHITE = '#292724'
const WIDE: ReadonlySet<Ink> = new Set(['outline', 'cutting-plane-end'])
/** Widths of lines, mm (ISO 128-2, 0.35 and half of it; memory). */
const WIDE_MM = 0.35
const NARROW_MM = 0.18
/** Dashes in mm: line widths times dash 12, long dash 24, gap 3, dot 0.5 (ISO 128-2; memory), as in the drawings on screen. */
const DASHES: Partial<Record<Ink, readonly number[]>> = {
  hidden: [2.16, 0.54],
  axis: [4.3, 0.54, 0.1, 0.54],
  'cutting-plane': [4.3, 0.54, 0.1, 0.54],
  hardware: [4.3, 0.54, 0.1, 0.54, 0.1, 0.54],
  ghost: [0.8, 0.7]
}
/** Washes that have a colour on paper; the others are the paper's own. What is doubtful is lighter than what is sure. */
const WASHES: Partial<Record<Paint, string>> = {
  clear: '#e4dfd2',
  recess: '#eae7df',
  dark: '#2e2b28',
  doubt: '#dddbd8',
  window: '#94a36a',
  'window-doubt': '#dde2cd',
  night: '#e6e4e0'
}
/** Lines that lie behind others or warn, in a colour of their own; all others are graphite. */
const TONES: Partial<Record<Ink, string>> = {
  halo: '#fbf8f1',
  rule: '#d8d4cb',
  ghost: '#9a948a',
  limit: '#c07f12',
  stop: '#a3341f',
  caution: '#8a5a00'
}

/**
 * Draws a sheet with its lower left corner `leftMm` from the left and its upper edge `topMm` under the upper edge
 * of the page, in its true size times `scale`.
 *
 * `pictures` are those that image marks name as "picture:N"; an image of another address is left out.
 */
export function drawSheet(
  doc: Blackboard,
  sheet: Sheet,
  leftMm: number,
  topMm: number,
  { scale = 1, pictures = [] }: { readonly scale?: number; readonly pictures?: readonly FaceImage[] } = {}
): void {
  const k = POINTS_PER_MM * scale
  doc.save()
  // From here a unit is a millimetre of the sheet, y up from its lower left corner.
  doc.transform(k, 0, 0, -k, leftMm * POINTS_PER_MM, topMm * POINTS_PER_MM + sheet.heightMm * k)
  doc.lineJoin('round')
  for (const m of sheet.marks) drawMark(doc, m, pictures)
  doc.restore()
}

function drawMark(doc: Blackboard, m: Mark, pictures: readonly FaceImage[]): void {
  switch (m.kind) {
    case 'line':
      pen(doc, m.ink)
      doc.moveTo(...at(m.from)).lineTo(...at(m.to))
      doc.stroke()
      return
    case 'path': {
      pen(doc, m.ink, m.widthMm, m.paint)
      for (const l of m.lines) trace(doc, l, m.closed ?? false)
      doc.stroke()
      return
    }
    case 'region':
      drawRegion(doc, m)
      return
    case 'circle':
      pen(doc, m.ink)
      doc.circle(m.at[0], m.at[1], finite(m.radiusMm))
      if (m.filled) doc.fill(GRAPHITE, 'nonzero')
      else doc.stroke()
      return
    case 'arrow':
      trace(doc, arrowhead(m.at, m.directionDeg, m.lengthMm), true)
      doc.fill(GRAPHITE, 'nonzero')
      return
    case 'text':
      letter(doc, m)
      return
    case 'group':
      for (const inner of m.marks) drawMark(doc, inner, pictures)
      return
    case 'image': {
      const picture = pictures[Number(/^picture:(\d+)$/.exec(m.href)?.[1] ?? Number.NaN)]
      if (picture !== undefined) drawPicture(doc, picture, m)
    }
  }
}

function drawRegion(doc: Blackboard, m: Extract<Mark, { kind: 'region' }>): void {
  if (m.rings.length === 0) return
  const rings = () => {
    for (const r of m.rings) trace(doc, r, true)
  }
  const tone = m.paint === null ? undefined : m.paint.startsWith('#') ? m.paint : WASHES[m.paint]
  if (tone !== undefined) {
    rings()
    doc.fill(tone, 'even-odd')
  }
  const hatch = m.hatch === null ? [] : hatchLines(m.rings, m.hatch)
  if (hatch.length > 0) {
    pen(doc, 'hatch')
    for (const l of hatch) trace(doc, l, false)
    doc.stroke()
  }
  if (m.edge !== null) {
    pen(doc, m.edge)
    rings()
    doc.stroke()
  }
}

function pen(doc: Blackboard, ink: Ink, widthMm = WIDE.has(ink) ? WIDE_MM : NARROW_MM, paint?: Paint): void {
  doc.lineWidth(widthMm).strokeColor(paint?.startsWith('#') ? paint : (TONES[ink] ?? GRAPHITE))
  const dashes = DASHES[ink]
  if (dashes === undefined) doc.undash()
  else doc.dash(dashes as unknown as number, {})
}

function trace(doc: Blackboard, points: Float64Array, closed: boolean): void {
  if (points.length < 2) return
  doc.moveTo(finite(points[0]!), finite(points[1]!))
  for (let k = 2; k + 1 < points.length; k += 2) doc.lineTo(finite(points[k]!), finite(points[k + 1]!))
  if (closed) doc.closePath()
}

function letter(doc: Blackboard, m: Extract<Mark, { kind: 'text' }>): void {
  doc.font(m.strong ? 'strong' : 'plain').fontSize(m.heightMm)
  const share = m.anchor === 'start' ? 0 : m.anchor === 'middle' ? 0.5 : 1
  const back = share * doc.widthOfString(m.text)
  doc
    .save()
    .translate(...at(m.at))
    .rotate(m.turnDeg ?? 0)
    .scale(1, -1)
  doc.fillColor(m.paint?.startsWith('#') ? m.paint : GRAPHITE)
  doc.text(m.text, -back, 0, { lineBreak: false, baseline: 'alphabetic' })
  doc.restore()
}

/** Half the width of an arrowhead by its length: 15° on each side, a filled arrow of ISO 129-1 (memory). */
const ARROW_SLOPE = 0.26

function arrowhead([x, y]: Spot, directionDeg: number, lengthMm: number): Float64Array {
  const a = (directionDeg * Math.PI) / 180
  const [bx, by] = [x - lengthMm * Math.cos(a), y - lengthMm * Math.sin(a)]
  const [dx, dy] = [-Math.sin(a) * lengthMm * ARROW_SLOPE, Math.cos(a) * lengthMm * ARROW_SLOPE]
  return Float64Array.of(x, y, bx + dx, by + dy, bx - dx, by - dy)
}

function at([x, y]: Spot): [number, number] {
  return [finite(x), finite(y)]
}

/** @throws Error for what is not a finite number */
function finite(mm: number): number {
  if (!Number.isFinite(mm)) throw new Error(`a mark at ${mm}; a sheet holds finite numbers only`)
  return mm
}
