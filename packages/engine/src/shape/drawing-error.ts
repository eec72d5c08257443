/** A drawing that cannot be read or used: bad path data, a number too large, too many points. */
export class DrawingError extends Error {
  override name = 'DrawingError'
}

/** A piece of foreign text as it may stand in a message: short, on one line, in quotation marks. */
export function quote(text: string): string {
  const line = text.slice(0, 60).replaceAll(/\s+/g, ' ').trim()
  return `"${line.length > 40 ? `${line.slice(0, 39)}…` : line}"`
}
