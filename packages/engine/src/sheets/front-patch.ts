import { coreAt } from '../stack/core.ts'
import type { CoreModel, CorePart } from './core-model.ts'
import { corePartsAt, seenTone, seenWords } from './core-model.ts'
import { wrapped } from './core-strip.ts'
import { seenColour } from './look.ts'
import type { Mark, Paint, Sheet } from './mark.ts'
import { CAPTION_MM, text } from './mark.ts'

const RADIUS_MM = 8
const WORDS_X = 22
/** Height of the words that lead, mm. */
const STRONG_MM = 3.75

/**
 * What the eye meets at the pointer: a disc in the colour of the core; where a cut from behind lies under it,
 * split into the colour over the cut and the colour beside it, edge to edge. The word leads.
 */
export function frontPatch(model: CoreModel, x: number, y: number, widthMm: number): Sheet {
  const heightMm = 2 * RADIUS_MM + 2
  const parts = corePartsAt(model, x, y)
  const here = colourAt(model, x, y, false)
  const covered = parts.find(p => p.seen !== null) ?? null
  const beside = covered === null ? here : colourAt(model, x, y, true)
  const [cx, cy] = [RADIUS_MM + 3, heightMm / 2]
  const marks: Mark[] = []
  if (here !== null) {
    marks.push(half(cx, cy, 1, here), half(cx, cy, -1, beside ?? here), {
      kind: 'circle',
      ink: 'edge',
      at: [cx, cy],
      radiusMm: RADIUS_MM
    })
  }
  const lines = wordsFor(parts, covered, widthMm - WORDS_X)
  lines.forEach(([words, tone], i) => {
    marks.push(
      text([WORDS_X, cy + (lines.length / 2 - i) * 4 - 3.1], words, {
        lettering: tone,
        heightMm: tone === 'caption' ? CAPTION_MM : STRONG_MM,
        strong: tone !== 'caption'
      })
    )
  })
  return { widthMm, heightMm, marks }
}

type Tone = 'caption' | 'figure' | 'stop' | 'caution'

function wordsFor(parts: readonly CorePart[], covered: CorePart | null, roomMm: number): [string, Tone][] {
  if (parts.length === 0) return [['outside the piece', 'caption']]
  if (covered === null) {
    return wrapped(lookedThrough(parts), roomMm, STRONG_MM, true).map((w, i): [string, Tone] => [
      w,
      i === 0 ? 'figure' : 'caption'
    ])
  }
  const seen = covered.seen!
  return [
    ...wrapped(`the void ${seenWords(seen)}`, roomMm, STRONG_MM, true).map((w): [string, Tone] => [
      w,
      seenTone(seen)
    ]),
    ...wrapped('left half over the cut, right half beside it', roomMm, CAPTION_MM).map(
      (w): [string, Tone] => [w, 'caption']
    )
  ]
}

// What is looked through and what ends the look: "Clear over Reed green".
function lookedThrough(parts: readonly CorePart[]): string {
  const names: string[] = []
  for (const p of [...parts].reverse()) {
    if (p.material === null) {
      if (names.length === 0) return parts.length === 1 ? 'an opening, right through' : 'the floor of a cut'
      names.push('a void')
      break
    }
    if (!names.includes(p.name)) names.push(p.name)
    if (p.material.kind === 'timber' || p.hatch.kind === 'crossed' || p.hatch.kind === 'solid') break
  }
  return names.join(' over ')
}

function colourAt(model: CoreModel, x: number, y: number, uncut: boolean): `#${string}` | null {
  const events = uncut ? model.events.filter(e => e.kind !== 'cut') : model.events
  return seenColour(model.looks, coreAt(model.geometry, events, x, y), 'front')
}

function half(cx: number, cy: number, side: 1 | -1, paint: Paint): Mark {
  const points: number[] = []
  for (let k = 0; k <= 24; k++) {
    const a = Math.PI / 2 + (side * Math.PI * k) / 24
    points.push(cx + RADIUS_MM * Math.cos(a), cy + RADIUS_MM * Math.sin(a))
  }
  return { kind: 'region', rings: [Float64Array.from(points)], paint, hatch: null, edge: null }
}
