import { find } from '../catalogue/find.ts'
import { formatC } from '../quantity/format.ts'
import { RUNAWAY_ABOVE_C } from '../resin/limits.ts'
import type { Check, Found } from './finding.ts'
import { setValue } from './fix.ts'
import { knownBy } from './known-by.ts'
import { depthUnder, setDepth } from './pour-depth.ts'
import type { Work } from './work.ts'

/** Board or liner of the mould that softens under the heat of a pour. */
export const mouldSoftens: Check = {
  id: 'mould-softens',
  about: 'a mould board or liner that softens below the peak of a pour',
  cases: [],
  run
}

interface Part {
  readonly at: string
  readonly name: string
  readonly softeningC: number | null
  readonly does: string
}

function run(work: Work): Found[] {
  const { base, walls, liner } = work.materials
  const board = 'it bows, and its joints open'
  const parts: readonly Part[] = [
    { at: '/mould/base', ...pick(base), does: board },
    ...(walls.id === base.id ? [] : [{ at: '/mould/wallBoard', ...pick(walls), does: board }]),
    { at: '/mould/liner', ...pick(liner), does: 'it wrinkles, creeps and lets resin through to the board' }
  ]
  const hottest = hottestPour(work)
  if (hottest === null) return []
  return parts.flatMap(part => one(work, part, hottest))
}

function pick(record: { readonly name: string; readonly softeningC: number | null }) {
  return { name: record.name, softeningC: record.softeningC }
}

// The pour into the mould whose band reaches highest.
function hottestPour(work: Work): number | null {
  let best: number | null = null
  work.casts.forEach((cast, i) => {
    if (!cast || work.piece.pours[i]!.kind !== 'cast') return
    if (best === null || cast.peakBandC[1] > work.casts[best]!.peakBandC[1]) best = i
  })
  return best
}

function one(work: Work, part: Part, pour: number): Found[] {
  const { softeningC } = part
  const cast = work.casts[pour]!
  const [low, high] = cast.peakBandC
  if (softeningC === null || high <= softeningC) return []
  const stop = cast.peakC > softeningC
  return [
    {
      severity: stop ? 'stop' : 'caution',
      at: part.at,
      says: `${part.name} softens from about ${formatC(softeningC)}; ${work.entries.pours[pour]!.id} ${stop ? `comes to ${cast.runaway ? 'a runaway' : formatC(cast.peakC)}` : `may reach ${high > RUNAWAY_ABOVE_C ? 'a runaway' : formatC(high)}, likeliest ${formatC(cast.peakC)}`}: ${stop ? part.does : `then ${part.does}`}.`,
      value: cast.peakC,
      unit: '°C',
      band: [low, high],
      limit: softeningC,
      basis: `softening: catalogue (memory and practice); the mould is taken as hot as the hottest place of the pour, the unfavourable end: cure model, ${knownBy(work, pour)}`,
      settledBy: 'a cup test of this resin',
      ...fixOf(work, part, high)
    }
  ]
}

/** A pour that is made shallower for a mould stays so far under what it bears, K: the search and the plan differ by less. */
const UNDER_K = 0.5

// A liner that bears the heat, else a pour that stays below it.
function fixOf(work: Work, part: Part, high: number): Pick<Found, 'fix' | 'fixSays'> {
  const tape = find('liner', 'release-tape')
  if (part.at === '/mould/liner' && tape !== null && high <= (tape.softeningC ?? Number.POSITIVE_INFINITY))
    return { fix: setValue(work.document, '/mould/liner', tape.id), fixSays: 'Release tape as liner' }
  // Every pour that comes to it, not the hottest alone.
  const limit = part.softeningC! - UNDER_K
  const depths = work.casts.flatMap((cast, i) =>
    cast && work.piece.pours[i]!.kind === 'cast' && cast.peakBandC[1] > part.softeningC!
      ? [setDepth(work, i, depthUnder(work, i, limit))]
      : []
  )
  if (depths.some(d => d.fix === undefined)) return {}
  return {
    fix: depths.flatMap(d => d.fix ?? []),
    fixSays: depths.map(d => d.fixSays).join(', ')
  }
}
