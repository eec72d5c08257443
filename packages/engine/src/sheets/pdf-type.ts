/**
 * Helvetica, one of the fourteen fonts every reader of ISO 32000-1 has (9.6.2.2), in its WinAnsi encoding (annex D).
 * Widths by the font's published metrics, thousandths of its size (Adobe Core 14 AFM; memory).
 */
const WIDTHS = [
  278, 278, 355, 556, 556, 889, 667, 191, 333, 333, 389, 584, 278, 333, 278, 278, 556, 556, 556, 556, 556,
  556, 556, 556, 556, 556, 278, 278, 584, 584, 584, 556, 1015, 667, 667, 722, 722, 667, 611, 778, 722, 278,
  500, 667, 556, 833, 722, 778, 667, 778, 722, 667, 611, 722, 667, 944, 667, 667, 611, 278, 278, 278, 469,
  556, 333, 556, 556, 500, 556, 556, 278, 556, 556, 222, 222, 500, 222, 833, 556, 556, 556, 556, 333, 500,
  278, 556, 500, 722, 500, 500, 500, 334, 260, 334, 584
]
/** Widths beyond ASCII that sheets use; others are taken as a figure. */
const WIDER: Readonly<Record<string, number>> = { Ø: 778, '×': 584, '°': 400, '±': 584, '·': 278, '’': 222 }
const FIGURE = 556

/** Signs of WinAnsi that stand elsewhere in Unicode. */
const ELSEWHERE: Readonly<Record<string, number>> = {
  '€': 0x80,
  '…': 0x85,
  '‘': 0x91,
  '’': 0x92,
  '“': 0x93,
  '”': 0x94,
  '•': 0x95,
  '–': 0x96,
  '—': 0x97
}

/** Width of a text, mm. */
export function helveticaWidthMm(words: string, heightMm: number): number {
  let sum = 0
  for (const sign of words) sum += WIDTHS[sign.codePointAt(0)! - 32] ?? WIDER[sign] ?? FIGURE
  return (sum * heightMm) / 1000
}

/** A text as a string of a content stream: ( ), \ and all beyond ASCII in octal; a sign the font lacks is "?". */
export function pdfString(words: string): string {
  let out = '('
  for (const sign of words) {
    const at = sign.codePointAt(0)!
    const code = ELSEWHERE[sign] ?? ((at >= 32 && at < 127) || (at >= 0xa0 && at <= 0xff) ? at : 0x3f)
    if (sign === '(' || sign === ')' || sign === '\\') out += `\\${sign}`
    else out += code < 127 ? String.fromCharCode(code) : `\\${code.toString(8)}`
  }
  return `${out})`
}
