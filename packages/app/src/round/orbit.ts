/** Where the eye stands: degrees about the upright axis and above the sheet, and how large a millimetre is. */
export interface Stand {
  readonly turnDeg: number
  readonly riseDeg: number
  readonly zoom: number
}

export const FIRST: Stand = { turnDeg: -27, riseDeg: 42, zoom: 1 }
/** Where a cut across the piece is seen from that is first made from {@link FIRST}: it turns away from there. */
export const ASIDE: Stand = { turnDeg: -58, riseDeg: 34, zoom: 1 }

const RISE = [4, 90] as const
const ZOOM = [0.6, 8] as const
/** Degrees a pixel of dragging turns, and a press of an arrow key. */
const DRAG_DEG = 0.35
const KEY_DEG = 6
const KEY_ZOOM = 1.2

export function moved(s: Stand, turn: number, rise: number, zoom = 1): Stand {
  return {
    turnDeg: ((((s.turnDeg + turn + 180) % 360) + 360) % 360) - 180,
    riseDeg: Math.min(RISE[1], Math.max(RISE[0], s.riseDeg + rise)),
    zoom: Math.min(ZOOM[1], Math.max(ZOOM[0], s.zoom * zoom))
  }
}

/** The stand after a key; null when the key means nothing here, and goes on to the page. */
export function keyed(s: Stand, key: string): Stand | null {
  switch (key) {
    case 'ArrowLeft':
      return moved(s, KEY_DEG, 0)
    case 'ArrowRight':
      return moved(s, -KEY_DEG, 0)
    case 'ArrowUp':
      return moved(s, 0, KEY_DEG)
    case 'ArrowDown':
      return moved(s, 0, -KEY_DEG)
    case '+':
    case '=':
      return moved(s, 0, 0, KEY_ZOOM)
    case '-':
      return moved(s, 0, 0, 1 / KEY_ZOOM)
    case 'Home':
      return FIRST
    default:
      return null
  }
}

/**
 * Turns the piece by dragging, by two fingers larger and smaller, by keys. The wheel stays the page's, but with
 * Control held; so does a drag of one finger up and down, as far as the browser sees it first.
 */
export function orbit(
  on: HTMLElement,
  get: () => Stand,
  set: (s: Stand, at: 'moving' | 'rest') => void
): () => void {
  const down = new Map<number, { x: number; y: number }>()
  const gone = new AbortController()
  const { signal } = gone
  on.addEventListener(
    'pointerdown',
    e => {
      if (e.button !== 0) return
      down.set(e.pointerId, { x: e.clientX, y: e.clientY })
      on.setPointerCapture(e.pointerId)
    },
    { signal }
  )
  on.addEventListener(
    'pointermove',
    e => {
      const was = down.get(e.pointerId)
      if (was === undefined) return
      const now = { x: e.clientX, y: e.clientY }
      if (down.size === 1)
        set(moved(get(), -(now.x - was.x) * DRAG_DEG, (now.y - was.y) * DRAG_DEG), 'moving')
      else {
        const other = [...down].find(([id]) => id !== e.pointerId)![1]
        const before = Math.hypot(was.x - other.x, was.y - other.y)
        const after = Math.hypot(now.x - other.x, now.y - other.y)
        if (before > 8) set(moved(get(), 0, 0, after / before), 'moving')
      }
      down.set(e.pointerId, now)
    },
    { signal }
  )
  const up = (e: PointerEvent) => {
    if (!down.delete(e.pointerId)) return
    set(get(), 'rest')
  }
  on.addEventListener('pointerup', up, { signal })
  on.addEventListener('pointercancel', up, { signal })
  on.addEventListener(
    'keydown',
    e => {
      if (e.ctrlKey || e.metaKey || e.altKey) return
      const next = keyed(get(), e.key)
      if (next === null) return
      e.preventDefault()
      set(next, 'rest')
    },
    { signal }
  )
  on.addEventListener(
    'wheel',
    e => {
      if (!e.ctrlKey) return
      e.preventDefault()
      set(moved(get(), 0, 0, Math.exp(-e.deltaY * 0.01)), 'rest')
    },
    { signal, passive: false }
  )
  return () => gone.abort()
}
