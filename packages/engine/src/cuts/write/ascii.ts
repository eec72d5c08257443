/**
 * Words as the comment of a program: plain letters that every control reads.
 *
 * RS274/NGC (NISTIR 6556, 3.3.4): a comment stands in one pair of round brackets, without any inside, and closes on
 * its line; a line has at most 256 characters. Signs that controls take for orders while a program streams in
 * (! ? ~ $ %; practice) are left out too, and so is ; which begins a comment of its own on many.
 */

const LETTERS: Readonly<Record<string, string>> = {
  ß: 'ss', æ: 'ae', Æ: 'AE', œ: 'oe', Œ: 'OE', ø: 'o', Ø: 'O', '⌀': 'dia', ł: 'l', Ł: 'L', đ: 'd', Đ: 'D', ð: 'd',
  Ð: 'D', þ: 'th', Þ: 'Th', ı: 'i', µ: 'u', μ: 'u', '×': 'x', '·': '.', '−': '-', '–': '-', '—': '-', '‑': '-', '’': "'",
  '‘': "'", '“': "'", '”': "'", '"': "'", '`': "'", '„': "'", '«': "'", '»': "'", '°': ' deg', '±': '+/-', '≤': 'at most ',
  '≥': 'at least ', '<': 'under ', '>': 'over ', '≈': 'about ', '…': '...', '½': '1/2', '¼': '1/4', '¾': '3/4', '²': '2',
  '³': '3', '→': 'to', '‰': ' per mille', '%': ' percent', '&': ' and ', '(': '- ', ')': '', '[': '- ', ']': '', '{': '- ',
  '}': '', ';': ',', '!': '.', '?': '.', '~': '-', '€': 'EUR', '£': 'GBP', $: 'USD', '#': 'no. ', '@': ' at ', '|': '/',
  '\\': '/', '^': '', '*': 'x', '§': 'section '
} // biome-ignore format: a table of letters

/** Marks that decomposing leaves beside a letter. */
const MARKS = /[̀-ͯ]/g
const KEPT = /[A-Za-z0-9 .,:+\-/='_]/

/** Text in the letters of a comment; one line, blanks single. A letter of another script becomes `_`. */
export function plain(text: string): string {
  const words = text.replace(/Ø\s*(?=[0-9])/g, 'dia ').normalize('NFC')
  let out = ''
  for (const letter of words) {
    const known = LETTERS[letter] ?? letter.normalize('NFD').replace(MARKS, '')
    for (const c of known) out += KEPT.test(c) ? c : /\s/.test(c) ? ' ' : /\p{C}/u.test(c) ? '' : '_'
  }
  return out.replace(/ +/g, ' ').trim()
}

/** Longest comment with its brackets. */
const MOST_COMMENT = 200

/** Comment lines of a text, broken between words; what follows the first is set in by two blanks. */
export function commentLines(text: string): string[] {
  const room = MOST_COMMENT - 4
  const out: string[] = []
  let line = ''
  const put = () => {
    if (line !== '') out.push(`(${out.length === 0 ? '' : '  '}${line})`)
    line = ''
  }
  for (const word of plain(text).split(' ')) {
    for (let from = 0; from === 0 || from < word.length; from += room) {
      const bit = word.slice(from, from + room)
      if (line !== '' && line.length + 1 + bit.length > room) put()
      line = line === '' ? bit : `${line} ${bit}`
    }
  }
  put()
  return out
}

/** Words that the control shows while it waits (RS274/NGC, 3.3.4), on one line. */
export function messageLine(text: string): string {
  return `(MSG, ${plain(text)
    .slice(0, MOST_COMMENT - 7)
    .trim()})`
}
