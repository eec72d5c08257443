/** Most octets of a line, without its end (RFC 5545, 3.1). */
const MOST_OCTETS = 75

/** Lines as they stand in a calendar file: folded between two characters, each ended by CR LF (RFC 5545, 3.1). */
export function contentLines(lines: readonly string[]): string {
  return lines.map(l => `${folded(l)}\r\n`).join('')
}

/** Words as a value of the type TEXT (RFC 5545, 3.3.11): what would end it is escaped, line breaks are "\n". */
export function textValue(words: string): string {
  return plain(words)
    .replace(/[\\;,]/g, c => `\\${c}`)
    .replaceAll('\n', '\\n')
}

/** A moment by its own clock, "20261128T093000", from ms that are read as UTC. */
export function stampOf(ms: number): string {
  return new Date(ms).toISOString().replace(/[-:]|\.\d+Z/g, '')
}

// Control characters have no place in a calendar file; a line break is kept where lines are.
function plain(text: string): string {
  return [...text.replace(/\r\n?/g, '\n')].filter(c => c === '\n' || (c >= ' ' && c !== '\u007f')).join('')
}

function folded(line: string): string {
  const out: string[] = []
  let part = ''
  let octets = 0
  for (const c of line) {
    const own = octetsOf(c.codePointAt(0)!)
    if (octets + own > MOST_OCTETS) {
      out.push(part)
      // The blank that begins a line counts.
      part = ' '
      octets = 1
    }
    part += c
    octets += own
  }
  return [...out, part].join('\r\n')
}

// In UTF-8 (RFC 3629).
function octetsOf(codePoint: number): number {
  if (codePoint < 0x80) return 1
  if (codePoint < 0x800) return 2
  return codePoint < 0x10000 ? 3 : 4
}
