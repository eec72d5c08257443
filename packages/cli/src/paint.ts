import colors from 'picocolors'

/** Colours of the terminal; none when it has none or NO_COLOR is set. The words say all without them. */
export const paint = {
  stop: (text: string) => colors.bold(colors.red(text)),
  caution: (text: string) => colors.yellow(text),
  note: (text: string) => colors.dim(text),
  ready: (text: string) => colors.green(text),
  strong: (text: string) => colors.bold(text),
  quiet: (text: string) => colors.dim(text)
}

/**
 * Words set in lines of at most `width` characters, each line after `indent`; a word longer than a line stands alone.
 * Control characters of the document never reach the terminal.
 */
export function wrap(text: string, width: number, indent = ''): string[] {
  const room = Math.max(20, width - indent.length)
  const lines: string[] = []
  let line = ''
  for (const word of plain(text).split(' ')) {
    if (line !== '' && line.length + 1 + word.length > room) {
      lines.push(indent + line)
      line = word
    } else line = line === '' ? word : `${line} ${word}`
  }
  if (line !== '') lines.push(indent + line)
  return lines
}

/** Text of a document without what a terminal would act on. */
export function plain(text: string): string {
  return text
    .replace(/[\p{Cc}\u2028\u2029\u202a-\u202e\u2066-\u2069]+/gu, ' ')
    .replace(/ {2,}/g, ' ')
    .trim()
}

/** Width to set text in: the terminal's, within what reads well. */
export function lineWidth(): number {
  return Math.min(110, Math.max(60, process.stdout.columns ?? 100))
}

/** Rows of cells in columns; numbers to the right where `right` says so. */
export function columns(rows: readonly (readonly string[])[], right: readonly boolean[] = []): string[] {
  const widths: number[] = []
  for (const row of rows)
    row.forEach((cell, i) => {
      widths[i] = Math.max(widths[i] ?? 0, cell.length)
    })
  return rows.map(row =>
    row
      .map((cell, i) =>
        right[i] ? cell.padStart(widths[i]!) : i === row.length - 1 ? cell : cell.padEnd(widths[i]!)
      )
      .join('  ')
      .trimEnd()
  )
}
