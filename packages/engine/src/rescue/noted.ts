import type { Reading } from '../piece/reading-schema.ts'
import type { RescueCase, Trouble, TroubleKind } from './condition.ts'
import { momentWords } from './moment-words.ts'

/** Where a trouble is: the list of entries it is of. */
type Of = 'pours' | 'cuts' | 'timbers'

/** Words by which a note speaks of a trouble that no number shows, and what it is then of. */
const WORDS: readonly {
  readonly kind: TroubleKind
  readonly of: Of
  readonly word: RegExp
  readonly asks: string
}[] = [
  {
    kind: 'bubble',
    of: 'pours',
    word: /\b(bubbles?|voids?|foam|pinholes?|blisters?)\b/i,
    asks: 'is there a bubble or a void that stays?'
  },
  {
    kind: 'timber parted',
    of: 'timbers',
    word: /\b(parted|gaps?|cracks?|cracked|splits?|come (away|off|loose)|came (away|off|loose))\b/i,
    asks: 'has timber parted from the resin?'
  },
  {
    kind: 'cutter broken',
    of: 'cuts',
    word: /\b(cutter|bit|mill|drill)\b.{0,30}\b(broke|broken|snapped|chipped)\b|\b(broke|broken|snapped)\b.{0,20}\b(cutter|bit|mill|drill)\b/i,
    asks: 'is a cutter broken?'
  },
  {
    kind: 'stones proud',
    of: 'pours',
    word: /\b(stones?|pebbles?|shells?)\b.{0,30}\b(proud|sticks? (out|up)|stands? (out|up|proud|too high))\b/i,
    asks: 'do stones stand proud?'
  },
  {
    kind: 'stones sunk',
    of: 'pours',
    word: /\b(stones?|pebbles?|shells?)\b.{0,30}\b(sunk|sank|sink|too deep|went down)\b/i,
    asks: 'have stones sunk?'
  },
  {
    kind: 'hole misplaced',
    of: 'cuts',
    word: /\b(holes?|pockets?|bores?|cuts?|slots?)\b.{0,40}\b(wrong place|misplaced|out of place|off by|astray|too far)\b/i,
    asks: 'is a hole or a pocket in the wrong place?'
  },
  {
    kind: 'leak',
    of: 'pours',
    word: /\b(leaks?|leaked|leaking|drips?|dripping|runs? out)\b/i,
    asks: 'is resin lost from the mould?'
  }
]

/** "no bubbles", "without a gap": the word stands there to say that it is not so. */
const NOT = /\b(no|not|none|never|without|any)\b[^.;:!?]{0,18}$/i
const MM = /([0-9]+(?:[.,][0-9]+)?)\s*mm\b/

/**
 * Troubles that notes speak of: asked about, never taken for so. A note tells of one until the trouble is logged, or the
 * note is withdrawn.
 *
 * Limits: English words, the commonest; a note in other words tells nothing.
 */
export function notedTroubles({ built }: RescueCase, kind: TroubleKind): Trouble[] {
  return WORDS.filter(w => w.kind === kind).flatMap(({ of, word, asks }) =>
    built.readings.flatMap((r): Trouble[] => {
      const { note } = r
      if (note === undefined || r.kind === 'trouble' || !speaks(note, word)) return []
      const settled = built.readings.some(
        x => x.kind === 'trouble' && x.trouble === kind && Date.parse(x.at) >= Date.parse(r.at)
      )
      if (settled) return []
      const names = built.entries[of].map(e => e.id)
      const mm = MM.exec(note)?.[1]
      return [
        {
          kind,
          of: nameIn(note, names) ?? nameAt(r, names) ?? (names.length === 1 ? names[0]! : null),
          byMm: mm === undefined ? null : Number(mm.replace(',', '.')),
          says: `a note of ${momentWords(r.at)} says “${note}”: ${asks}`,
          readings: [r.id]
        }
      ]
    })
  )
}

function speaks(note: string, word: RegExp): boolean {
  const found = word.exec(note)
  return found !== null && !NOT.test(note.slice(0, found.index))
}

function nameIn(note: string, names: readonly string[]): string | null {
  const words = note.toLowerCase()
  return names.find(n => words.includes(n.toLowerCase())) ?? null
}

// The entry of the step it was written at.
function nameAt(r: Reading, names: readonly string[]): string | null {
  const step = 'step' in r ? (r.step ?? '') : ''
  return names.find(n => step.endsWith(` ${n}`)) ?? null
}
