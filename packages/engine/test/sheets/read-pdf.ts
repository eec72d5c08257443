/** One page as read back: size in points, and its content with numbers apart from operators. */
export interface ReadPage {
  readonly widthPt: number
  readonly heightPt: number
  readonly content: string
}

/**
 * Reads a PDF by the rules of ISO 32000-1 7.5: from `startxref` through the cross-reference table and the trailer to
 * the pages. Written apart from the writer, as small as the files need: tables of one section, direct lengths.
 * @throws Error where an offset does not meet its object, or a length its stream
 */
export function readPdf(bytes: Uint8Array): { readonly pages: readonly ReadPage[]; readonly title: string } {
  const text = Array.from(bytes, b => String.fromCharCode(b)).join('')
  if (!text.startsWith('%PDF-1.')) throw new Error('no header')
  if (!/%%EOF\n?$/.test(text)) throw new Error('no end')
  const start = Number(/startxref\s+(\d+)\s+%%EOF/.exec(text)![1])
  if (text.slice(start, start + 4) !== 'xref') throw new Error('startxref does not meet the table')
  const [, count] = /xref\n0 (\d+)\n/.exec(text.slice(start))!
  const rows = text.slice(text.indexOf('\n', start + 5) + 1)
  const at: number[] = []
  for (let k = 0; k < Number(count); k++) {
    // Each entry is twenty bytes to the letter.
    const row = rows.slice(20 * k, 20 * k + 20)
    if (!/^\d{10} \d{5} [nf] \n$/.test(row)) throw new Error(`entry ${k}: ${JSON.stringify(row)}`)
    at.push(Number(row.slice(0, 10)))
  }
  const object = (n: number): string => {
    const here = text.slice(at[n])
    if (!here.startsWith(`${n} 0 obj\n`)) throw new Error(`offset of object ${n} meets ${here.slice(0, 12)}`)
    return here.slice(here.indexOf('\n') + 1, here.indexOf('\nendobj'))
  }
  const ref = (body: string, key: string) => Number(new RegExp(`/${key} (\\d+) 0 R`).exec(body)![1])
  const trailer = text.slice(text.lastIndexOf('trailer'))
  if (Number(/\/Size (\d+)/.exec(trailer)![1]) !== at.length) throw new Error('size of the trailer')
  const pages = object(ref(object(ref(trailer, 'Root')), 'Pages'))
  const kids = [.../\/Kids \[(.*?)\]/.exec(pages)![1]!.matchAll(/(\d+) 0 R/g)].map(m => Number(m[1]))
  if (Number(/\/Count (\d+)/.exec(pages)![1]) !== kids.length) throw new Error('count of pages')
  return {
    title: /\/Title \((.*)\) \/Producer/.exec(object(ref(trailer, 'Info')))![1]!,
    pages: kids.map(kid => {
      const page = object(kid)
      const [, w, h] = /\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/.exec(page)!
      const stream = object(ref(page, 'Contents'))
      const length = Number(/\/Length (\d+)/.exec(stream)![1])
      const from = stream.indexOf('stream\n') + 7
      if (stream.slice(from + length) !== '\nendstream') throw new Error(`length of the stream of ${kid}`)
      return { widthPt: Number(w), heightPt: Number(h), content: stream.slice(from, from + length) }
    })
  }
}

/** Straight stretches of a page in mm of paper, from `m` and `l` under the page's own scale. */
export function stretchesMm(
  content: string
): { readonly from: [number, number]; readonly to: [number, number] }[] {
  const scale = (Number(/^q ([\d.]+) 0 0/.exec(content)![1]) / 72) * 25.4
  const out: { from: [number, number]; to: [number, number] }[] = []
  let here: [number, number] = [0, 0]
  for (const [, x, y, op] of content.matchAll(/(-?[\d.]+) (-?[\d.]+) ([ml])\b/g)) {
    const next: [number, number] = [Number(x) * scale, Number(y) * scale]
    if (op === 'l') out.push({ from: here, to: next })
    here = next
  }
  return out
}
