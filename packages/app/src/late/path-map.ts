import type * as Paths from '../../../engine/src/draw/path-map.ts'

/** Maps path data in the window: loaded once a plan is there, since nothing is moved before. */
let loaded: typeof Paths | null = null

export async function loadPathMap(): Promise<void> {
  loaded ??= await import('../../../engine/src/draw/path-map.ts')
}

/** Path data moved by (dx, dy), its own y down; null until what does it is loaded. */
export function pathMoved(d: string, dx: number, dy: number): string | null {
  return loaded === null ? null : loaded.mapped(d, [1, 0, 0, 1, dx, dy])
}
