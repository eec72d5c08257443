import { getDocument, OPS } from 'pdfjs-dist/legacy/build/pdf.mjs'

/** A straight stretch on a page, mm from its lower left corner. */
export interface Stretch {
  readonly from: readonly [number, number]
  readonly to: readonly [number, number]
  readonly lengthMm: number
}

export interface ReadPage {
  readonly widthMm: number
  readonly heightMm: number
  /** Texts as they can be selected, with the foot of their first letter, mm. */
  readonly texts: readonly { readonly text: string; readonly x: number; readonly y: number }[]
  readonly stretches: readonly Stretch[]
  readonly images: number
  /** Colours of lines and areas, "#rrggbb". */
  readonly inks: readonly string[]
  /** Where each picture lies, mm from the lower left corner. */
  readonly pictures: readonly {
    readonly x: number
    readonly y: number
    readonly widthMm: number
    readonly heightMm: number
  }[]
}

export interface ReadPaper {
  readonly title: string | undefined
  readonly pages: readonly ReadPage[]
  /** All that is written, page by page, one blank between texts. */
  readonly words: string
}

const MM = 25.4 / 72
type Matrix = readonly [number, number, number, number, number, number]

/** Reads a PDF file by a general reader that shares nothing with what wrote it. */
export async function readPaper(bytes: Uint8Array): Promise<ReadPaper> {
  const task = getDocument({ data: bytes.slice(), verbosity: 0, disableFontFace: true })
  const file = await task.promise
  const info = (await file.getMetadata()).info as { Title?: string }
  const pages: ReadPage[] = []
  for (let k = 1; k <= file.numPages; k++) {
    const page = await file.getPage(k)
    const [x0, y0, x1, y1] = page.view as [number, number, number, number]
    const content = await page.getTextContent()
    const texts = content.items.flatMap(item =>
      'str' in item && item.str.trim() !== ''
        ? [{ text: item.str, x: (item.transform[4] as number) * MM, y: (item.transform[5] as number) * MM }]
        : []
    )
    const list = await page.getOperatorList()
    pages.push({ widthMm: (x1 - x0) * MM, heightMm: (y1 - y0) * MM, texts, ...drawnOn(list) })
  }
  await task.destroy()
  const words = pages
    .flatMap(p => p.texts.map(t => t.text))
    .join(' ')
    .replace(/\s+/g, ' ')
  return { title: info.Title, pages, words }
}

interface Operations {
  readonly fnArray: readonly number[]
  readonly argsArray: readonly unknown[]
}

function drawnOn({
  fnArray,
  argsArray
}: Operations): Pick<ReadPage, 'stretches' | 'images' | 'pictures' | 'inks'> {
  let at: Matrix = [1, 0, 0, 1, 0, 0]
  const kept: Matrix[] = []
  const stretches: Stretch[] = []
  const pictures: ReadPage['pictures'][number][] = []
  const inks = new Set<string>()
  fnArray.forEach((op, k) => {
    const args = argsArray[k] as unknown[]
    if (op === OPS.save) kept.push(at)
    else if (op === OPS.restore) at = kept.pop() ?? at
    else if (op === OPS.transform) at = times(args as unknown as Matrix, at)
    else if (op === OPS.setFillRGBColor || op === OPS.setStrokeRGBColor) inks.add(String(args[0]))
    else if (op === OPS.paintImageXObject)
      pictures.push({ x: at[4] * MM, y: at[5] * MM, widthMm: at[0] * MM, heightMm: at[3] * MM })
    else if (op === OPS.constructPath)
      stretches.push(...straight((args[1] as [ArrayLike<number> | null])[0], at))
  })
  return { stretches, images: pictures.length, pictures, inks: [...inks] }
}

function times(m: Matrix, by: Matrix): Matrix {
  return [
    m[0] * by[0] + m[1] * by[2],
    m[0] * by[1] + m[1] * by[3],
    m[2] * by[0] + m[3] * by[2],
    m[2] * by[1] + m[3] * by[3],
    m[4] * by[0] + m[5] * by[2] + by[4],
    m[4] * by[1] + m[5] * by[3] + by[5]
  ]
}

// A path of the reader: 0 move x y, 1 line x y, 2 curve of six, 3 curve of four, 4 close.
function straight(path: ArrayLike<number> | null, m: Matrix): Stretch[] {
  if (path === null) return []
  const out: Stretch[] = []
  const place = (x: number, y: number) =>
    [(m[0] * x + m[2] * y + m[4]) * MM, (m[1] * x + m[3] * y + m[5]) * MM] as const
  let last = place(0, 0)
  let first = last
  const line = (to: readonly [number, number]): void => {
    out.push({ from: last, to, lengthMm: Math.hypot(to[0] - last[0], to[1] - last[1]) })
    last = to
  }
  for (let k = 0; k < path.length; ) {
    const op = path[k++]
    if (op === 0) {
      last = place(path[k]!, path[k + 1]!)
      first = last
      k += 2
    } else if (op === 1) {
      line(place(path[k]!, path[k + 1]!))
      k += 2
    } else if (op === 2) {
      last = place(path[k + 4]!, path[k + 5]!)
      k += 6
    } else if (op === 3) {
      last = place(path[k + 2]!, path[k + 3]!)
      k += 4
    } else line(first)
  }
  return out
}
