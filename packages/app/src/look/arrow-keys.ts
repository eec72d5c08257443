/** Steps of the arrow keys: alone, and with Shift. In mm, or px of a photo. */
const STEP = 1
const LONG_STEP = 10

/**
 * The step an arrow key means, x to the right and y up; null for other keys, and with Alt, Control or Meta held,
 * which mean something to the browser. On a plan seen from behind (`mirrored`) right is left.
 */
export function arrowStep(
  e: Pick<KeyboardEvent, 'key' | 'shiftKey' | 'altKey' | 'ctrlKey' | 'metaKey'>,
  mirrored = false
): readonly [dx: number, dy: number] | null {
  if (e.altKey || e.ctrlKey || e.metaKey) return null
  const step = e.shiftKey ? LONG_STEP : STEP
  const right = mirrored ? -step : step
  switch (e.key) {
    case 'ArrowRight':
      return [right, 0]
    case 'ArrowLeft':
      return [-right, 0]
    case 'ArrowUp':
      return [0, step]
    case 'ArrowDown':
      return [0, -step]
    default:
      return null
  }
}
