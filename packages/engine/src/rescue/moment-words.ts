/** A moment as it was written, for people: "2026-12-05 09:00". */
export function momentWords(at: string): string {
  return at.replace('T', ' ').slice(0, 16)
}
