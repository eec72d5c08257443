import PDFDocument from 'pdfkit'
import { firstFont, setType } from './type.ts'

/** What is drawn on: a document of the PDF library. */
export type Blackboard = PDFKit.PDFDocument

/** Points of PDF in a millimetre (ISO 32000-1: a unit is 1/72 in). */
export const POINTS_PER_MM = 72 / 25.4

export interface PrintedOptions {
  readonly title: string
  /** What counts as now, ISO 8601: stands in the file as its date, so that the same plan gives the same bytes. */
  readonly asOf: string
}

/**
 * A PDF file in the making: type embedded as the part that is used, text that can be selected, no page yet.
 * Read whole by {@link bytesOf} once it is ended.
 */
export function printed({ title, asOf }: PrintedOptions): Blackboard {
  const doc = new PDFDocument({
    autoFirstPage: false,
    bufferPages: true,
    margin: 0,
    font: firstFont(),
    info: { Title: title, Producer: 'Castwright', Creator: 'Castwright', CreationDate: new Date(asOf) },
    pdfVersion: '1.7',
    lang: 'en'
  })
  setType(doc)
  return doc
}

/** Ends the file and takes its bytes. @throws Error when it is not whole */
export function bytesOf(doc: Blackboard): Uint8Array {
  doc.end()
  const chunks: Buffer[] = []
  for (let chunk = doc.read() as Buffer | null; chunk !== null; chunk = doc.read() as Buffer | null)
    chunks.push(chunk)
  const out = Buffer.concat(chunks)
  if (!out.subarray(-8).toString('latin1').includes('%%EOF')) throw new Error('a PDF file that is not whole')
  return new Uint8Array(out)
}

/** A page of its own size, mm. */
export function addPage(doc: Blackboard, widthMm: number, heightMm: number): void {
  doc.addPage({ size: [widthMm * POINTS_PER_MM, heightMm * POINTS_PER_MM], margin: 0 })
}
