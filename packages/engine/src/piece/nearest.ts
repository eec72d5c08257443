/** Edit distance with neighbouring letters swapped counted once (optimal string alignment). */
export function editDistance(a: string, b: string): number {
  let before: number[] = []
  let row = Array.from({ length: b.length + 1 }, (_, j) => j)
  for (let i = 1; i <= a.length; i++) {
    const next = [i]
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1] ? 0 : 1
      let best = Math.min(row[j]! + 1, next[j - 1]! + 1, row[j - 1]! + same)
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1])
        best = Math.min(best, before[j - 2]! + 1)
      next.push(best)
    }
    before = row
    row = next
  }
  return row[b.length]!
}

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
