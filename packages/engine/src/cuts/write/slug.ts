import { plain } from './ascii.ts'

/** Longest name without its ending: some controls show no more. */
const MOST_NAME = 60
const HEAD = 40
/** Names that some systems keep for devices. */
const KEPT = /^(con|prn|aux|nul|com[0-9]|lpt[0-9])$/

/** A name of a file from words. */
export function slug(words: string): string {
  const letters = plain(words)
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '')
  // What it is stands at the end: that is kept of a long one.
  const long = letters.length > MOST_NAME
  const cut = long
    ? `${letters.slice(0, HEAD)}-${letters.slice(HEAD + 1 - MOST_NAME)}`.replace(/-+/g, '-')
    : letters
  return cut === '' || KEPT.test(cut) ? `program${cut === '' ? '' : `-${cut}`}` : cut
}
