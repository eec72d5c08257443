import { editDistance } from '../catalogue/word.ts'

/** The option nearest to `word`, if near enough to be what was meant; else null. */
export function nearest(word: string, options: readonly string[]): string | null {
  const low = word.slice(0, 60).toLowerCase()
  let best: string | null = null
  let least = Math.max(2, Math.ceil(low.length * 0.45)) + 1
  for (const option of options) {
    const o = option.toLowerCase()
    const d = o.startsWith(low) || low.startsWith(o) ? 1 : editDistance(low, o)
    if (d < least) {
      least = d
      best = option
    }
  }
  return best
}
