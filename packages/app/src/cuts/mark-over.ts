import { cutsWords as c } from '../text/cuts.ts'
import type { FoundMark } from '../worker/cuts-view.ts'

/** The ring of a mark, mm on the drawing; its words, high and off it. */
const RING_MM = 6
const WORDS_MM = 3.25
const OFF_MM = 2

/** A finding as it is marked over a drawing of some width: a ring, and its line beside it on the side with room. */
export function markOver({ at, line }: FoundMark, widthMm: number): string {
  if (at === null) return ''
  const [x, y] = at
  const left = x > widthMm / 2
  const words = c.lineShort(line)
  const foot = y + WORDS_MM / 3
  const start = x + (left ? -1 : 1) * (RING_MM + OFF_MM)
  const f = (v: number) => String(Math.round(v * 100) / 100)
  const ring = `<circle class="i-stop mark" cx="${f(x)}" cy="${f(y)}" r="${RING_MM}"/>`
  return words === ''
    ? ring
    : `${ring}<text class="l-stop mark" x="${f(start)}" y="${f(foot)}" font-size="${WORDS_MM}" text-anchor="${left ? 'end' : 'start'}" font-weight="700">${words}</text>`
}
