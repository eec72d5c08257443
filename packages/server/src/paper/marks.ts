import type { FaceImage, Ink, Mark, Paint, Sheet, Spot } from '@castwright/engine'
import { arrowhead, GRAPHITE, hatchLines, penOf, SHEET, WASHES } from '@castwright/engine'
import { drawPicture } from './picture.ts'
import type { Blackboard } from './printed.ts'
import { POINTS_PER_MM } from './printed.ts'

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
  const wash =
    m.paint === null
      ? undefined
      : m.paint.startsWith('#')
        ? { colour: m.paint, strength: 1 }
        : WASHES.get(m.paint)
  if (wash !== undefined) {
    rings()
    doc.fillOpacity(wash.strength).fill(printed(wash.colour), 'even-odd').fillOpacity(1)
  }
  const hatch = m.hatch === null ? [] : hatchLines(m.rings, m.hatch)
  if (hatch.length > 0) {
    pen(doc, m.hatch?.kind === 'dots' ? 'dot' : 'hatch')
    for (const l of hatch) trace(doc, l, false)
    doc.stroke()
  }
  if (m.edge !== null) {
    pen(doc, m.edge)
    rings()
    doc.stroke()
  }
}

// The colour of the sheet is left to the paper that is printed on.
function printed(colour: string): string {
  return colour === SHEET ? '#ffffff' : colour
}

function pen(doc: Blackboard, ink: Ink, ownMm?: number, paint?: Paint): void {
  const { widthMm, dashesMm, colour, strength, roundEnds } = penOf(ink)
  doc.lineWidth(ownMm ?? widthMm).strokeColor(paint?.startsWith('#') ? paint : printed(colour))
  doc.strokeOpacity(strength).lineCap(roundEnds ? 'round' : 'butt')
  if (dashesMm === undefined) doc.undash()
  else doc.dash(dashesMm as unknown as number, {})
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

function at([x, y]: Spot): [number, number] {
  return [finite(x), finite(y)]
}

/** @throws Error for what is not a finite number */
function finite(mm: number): number {
  if (!Number.isFinite(mm)) throw new Error(`a mark at ${mm}; a sheet holds finite numbers only`)
  return mm
}
