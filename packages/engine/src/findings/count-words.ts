/** A large number as a person says it: two figures, "thousands" from there on. */
export function countWords(count: number): string {
  if (count >= 10_000) return 'many thousand'
  const step = 10 ** Math.max(0, Math.floor(Math.log10(Math.max(1, count))) - 1)
  return String(Math.round(count / step) * step)
}
