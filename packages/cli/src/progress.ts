/**
 * A line on standard error that says how far a long run is, renewed in place; nothing where nobody looks at a
 * terminal. Call `end` before anything else is printed.
 */
export function progressLine(what: string): { on: (share: number) => void; end: () => void } {
  const { stderr } = process
  let shown = ''
  const show = (text: string): void => {
    if (!stderr.isTTY || text === shown) return
    stderr.write(`\r\u001b[2K${text}`)
    shown = text
  }
  return {
    on: share => show(`${what}: ${Math.round(100 * share)} %`),
    end: () => {
      show('')
    }
  }
}
