import type { PourCast } from '../cast/cast.ts'
import type { Window } from '../cast/window.ts'
import { aboutTime, roughTime } from '../quantity/rough.ts'

/** A window of a pour as it is written and drawn. */
export interface WindowRow {
  /** One or two words, beside its span on a curve. */
  readonly short: string
  /** What it is, as the head of a row. */
  readonly label: string
  readonly window: Window
  /** How it is told: from one end to the other, by its end alone, by its moments. */
  readonly kind: 'span' | 'until' | 'moments'
  /** From when to when, likeliest. */
  readonly says: string
  /** Ends within the band, "38–80 h"; '' where there is no doubt to speak of. */
  readonly band: string
  /** The reading that would sharpen it, as something done at the bench. */
  readonly sharper: string
}

/** What of a pour's surroundings decides which windows matter. */
export interface WindowsAsked {
  /** Another pour goes on this one. */
  readonly next: boolean
  /** It is cast in the mould, so that it is taken out of it and cut. */
  readonly inMould: boolean
}

/** Windows of a pour in the order in which they come; none for a pour that runs away. */
export function windowRows(cast: PourCast, { next, inMould }: WindowsAsked): WindowRow[] {
  if (cast.runaway) return []
  const w = cast.windows
  const rows: WindowRow[] = []
  const add = (short: string, label: string, window: Window | null, says = window && spanWords(window)) => {
    if (window === null || says === null) return
    rows.push({
      short,
      label,
      window,
      kind: window === w.working ? 'until' : window === w.passes ? 'moments' : 'span',
      says: unbroken(says),
      band: unbroken(bandWords(window)),
      sharper: window.settledBy
    })
  }
  const { close } = w.working
  add(
    'flows',
    inMould ? 'Workable in the mould' : 'Workable',
    w.working,
    close === null ? 'it does not thicken in seven days' : `for ${aboutTime(close, 'down')}`
  )
  if (w.passes.moments.length > 0)
    add('heat gun', 'Heat gun over the face', w.passes, `after ${listed(w.passes.moments)} min`)
  if (cast.swirls !== null) add('draw colours', 'Draw the colours', w.marbling)
  add('stones in', 'Stones dropped in stay', w.stones)
  if (next || w.stones !== null) add('tacky', 'Tacky: stones set on it stick', w.tacky)
  if (next) add('next pour', 'Next pour bonds', w.recoat)
  if (inMould) add('out of the mould', 'Out of the mould', w.demould)
  add('sand', 'For abrasive paper', w.sand)
  if (inMould) add('cut', 'For the cutter', w.machine)
  add('use', 'Into use', w.service)
  return rows
}

// A figure and its unit stay on one line.
function unbroken(words: string): string {
  return words.replace(/(\d) (?=(?:h|d|min)\b)/g, '$1\u00a0')
}

function spanWords(w: Window): string {
  if (!w.reached) return `not within ${roughTime(w.open)}`
  return w.close === null ? `from ${aboutTime(w.open)}` : `${aboutTime(w.open)} to ${roughTime(w.close)}`
}

/** A doubt smaller than this is none, min. */
const LEAST_DOUBT_MIN = 5

/** "38–80 h" for an opening, "2–4 h to 8–15 h" for both ends. */
function bandWords({ openBand, closeBand, open, close }: Window): string {
  const opens = open === 0 ? '' : range(openBand)
  const closes = close === null ? '' : range(closeBand)
  if (opens === '' || closes === '') return `${opens}${closes}`
  return `${opens} to ${closes}`
}

function range([low, high]: readonly [number | null, number | null]): string {
  if (low === null) return ''
  if (high === null) return `from ${roughTime(low)}`
  if (high - low < LEAST_DOUBT_MIN) return ''
  const [from, to] = [roughTime(low), roughTime(high)]
  if (from === to) return ''
  // One unit for both, where both have the same.
  const unit = / (h|d|min)$/.exec(to)?.[0] ?? ''
  return unit !== '' && from.endsWith(unit) ? `${from.slice(0, -unit.length)}–${to}` : `${from}–${to}`
}

function listed(minutes: readonly number[]): string {
  return minutes.length < 2 ? minutes.join('') : `${minutes.slice(0, -1).join(', ')} and ${minutes.at(-1)}`
}
