/** Longest question that is looked at, letters. */
const LONGEST = 80

/** Words of a name or question: lower case, without accents or punctuation. */
export function tokensOf(text: string): readonly string[] {
  return (
    text
      .slice(0, LONGEST)
      .normalize('NFKD')
      .replace(/\p{M}/gu, '')
      .toLowerCase()
      .match(/[\p{L}\p{N}]+/gu) ?? []
  )
}

/**
 * Edit distance of two words: letters put in, left out, exchanged (Levenshtein 1966), and neighbours swapped
 * counted once (optimal string alignment, after Damerau 1964).
 */
export function editDistance(a: string, b: string): number {
  let before: number[] = []
  let row = Array.from({ length: b.length + 1 }, (_, j) => j)
  for (let i = 1; i <= a.length; i++) {
    const next = [i]
    for (let j = 1; j <= b.length; j++) {
      const exchanged = row[j - 1]! + (a[i - 1] === b[j - 1] ? 0 : 1)
      let least = Math.min(row[j]! + 1, next[j - 1]! + 1, exchanged)
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) {
        least = Math.min(least, before[j - 2]! + 1)
      }
      next.push(least)
    }
    before = row
    row = next
  }
  return row[b.length]!
}

/**
 * How alike a question and a name are, 0..1: the mean over the question's words of their best match in the
 * name, less a little for each word of the name that was not asked for.
 */
export function alike(wanted: readonly string[], name: readonly string[]): number {
  if (wanted.length === 0 || name.length === 0) return 0
  let sum = 0
  for (const w of wanted) {
    let best = 0
    for (const n of name) {
      const near = 1 - editDistance(w, n) / Math.max(w.length, n.length)
      // A word begun counts nearly as the word: "walnu" while typing.
      best = Math.max(best, n.startsWith(w) ? Math.max(near, 0.9) : near)
    }
    sum += best
  }
  const spare = Math.max(0, name.length - wanted.length)
  return Math.max(0, sum / wanted.length - 0.03 * spare)
}
