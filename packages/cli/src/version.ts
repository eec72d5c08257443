import { createRequire } from 'node:module'

const own = createRequire(import.meta.url)

/** Version of this build, from its package: the sources stand one folder higher than what is built. */
export const VERSION: string = versionIn(['../package.json', '../../package.json'])

function versionIn(places: readonly string[]): string {
  for (const place of places) {
    try {
      const found = own(place) as { name?: string; version?: string }
      if (found.name === 'castwright' && found.version !== undefined) return found.version
    } catch {
      // Not there: the next place.
    }
  }
  return 'unknown'
}
