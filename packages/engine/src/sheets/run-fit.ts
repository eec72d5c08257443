import { find } from '../catalogue/find.ts'
import type { Work } from '../findings/work.ts'
import type { SizeChain } from '../fits/chain.ts'
import type { CutSize } from '../fits/cut-size.ts'
import type { HardwareFit } from '../fits/hardware.ts'
import type { Band, Cause } from '../fits/share.ts'
import type { Lengths } from '../piece/lengths.ts'
import { lengthsOf } from '../piece/lengths.ts'
import type { Face } from '../piece/piece-schema.ts'
import type { Plan, PlanHardware } from '../plan.ts'
import { deviationsMm, fitMm } from '../tolerance/iso286.ts'
import type { RunFact } from './run-part.ts'
import { fact } from './run-part.ts'

/** A change of size across that is worth a line, mm: a tenth is what a caliper at the bench tells apart. */
const WORTH_MM = 0.1

/** "60.1 to 60.4"; one figure where both ends read alike. */
export function bandWords(band: Band, L: Lengths): string {
  const [low, high] = [L.of(band[0], 1, 1), L.of(band[2], 1, 1)]
  return low === high ? low : `${low} to ${high}`
}

/** What a cut ends at, where it changes by more than a tenth or a part has to go in. */
export function endsAt(work: Work, cut: number, size: CutSize | null): RunFact[] {
  const L = lengthsOf(work.shop)
  if (size === null) return []
  const sign = size.measured === 'diameter' ? 'Ø ' : ''
  const side = MEASURED_WORDS[size.measured]
  const part = work.fits.find(f => f.chain?.of === 'cut' && f.chain.index === cut && f.cutMm !== null)
  const out: RunFact[] = []
  if (part !== undefined || Math.abs(size.finalMm[1] - size.drawnMm) >= WORTH_MM)
    out.push(
      fact('Ends at', `${sign}${bandWords(size.finalMm, L)}`, `${L.unit}${side}${becauseOf(size, work, cut)}`)
    )
  if (part !== undefined && size.cutMm > size.drawnMm + WORTH_MM / 2)
    out.push(
      fact(
        'For the gap wanted cut',
        `${sign}${L.of(size.cutMm, 1, 1)}`,
        `${L.unit}${side}, ${L.of(size.cutMm - size.drawnMm, 1, 1)} more than drawn`
      )
    )
  return out
}

const MEASURED_WORDS = {
  diameter: '',
  width: ' wide',
  'across the grain': ' across the grain',
  'narrower side': ' across its narrower side'
} as const

const CAUSE_WORDS: Partial<Record<Cause, string>> = {
  cure: 'as the resin cures on',
  season: 'over the year',
  warmth: 'from cold to warm'
}

function becauseOf(size: CutSize, work: Work, cut: number): string {
  const chain = work.chains.find(c => c.of === 'cut' && c.index === cut)
  const words = (chain?.shares ?? []).flatMap(s => {
    const moves = 2 * (s.sideMm[2] - s.sideMm[0])
    return moves >= WORTH_MM && CAUSE_WORDS[s.cause] !== undefined ? [CAUSE_WORDS[s.cause]!] : []
  })
  if (size.coats > 0) words.unshift(`after ${size.coats} coat${size.coats === 1 ? '' : 's'}`)
  return words.length === 0 ? '' : `, ${words.join(' and ')}`
}

/** What a cut asks beyond being cut. */
export function cutDoes(work: Work, cut: number): string[] {
  const L = lengthsOf(work.shop)
  const { toleranceClass, mask } = work.piece.cuts[cut]!
  const chain = work.chains.find(c => c.of === 'cut' && c.index === cut)
  const out: string[] = []
  if (toleranceClass !== undefined && chain !== undefined) {
    const { lowerMm, upperMm } = deviationsMm(chain.drawnMm, toleranceClass)
    out.push(
      `Drill it smaller and ream it to ${L.of(chain.drawnMm, 2)} ${toleranceClass}: ${L.of(chain.drawnMm + lowerMm, 3)} to ${L.of(chain.drawnMm + upperMm, 3)} ${L.unit}.`
    )
  }
  if (chain !== undefined) out.push(...noBit(work, cut, chain))
  if (mask === true) out.push('Plug or tape it before the face is coated.')
  return out
}

/** Bits of the shop within this of a size cut it, mm. */
const SAME_BIT_MM = 0.1
const BITS = new Set(['drill', 'brad-point', 'forstner'])

// A bore that no bit in the drawer makes is roughed out and routed along a template.
function noBit(work: Work, cut: number, { drawnMm, measured }: SizeChain): string[] {
  const L = lengthsOf(work.shop)
  const bits = work.shop.cutters.filter(c => BITS.has(find('cutter', c.kind)?.kind ?? ''))
  if (measured !== 'diameter' || work.piece.cuts[cut]!.way !== 'drill' || bits.length === 0) return []
  if (bits.some(c => Math.abs(c.diameter - drawnMm) <= SAME_BIT_MM)) return []
  const largest = Math.max(...bits.map(c => c.diameter))
  return [
    `No bit of Ø ${L.of(drawnMm, 1)} is listed in the shop, the largest is ${L.of(largest, 1)}: bore it smaller and rout it along a template, held by screws or hot glue, not by tape.`
  ]
}

/** What is to be masked before a face is coated; empty when nothing is. */
export function maskWords(work: Work, face: Face | 'both'): string[] {
  const names = maskedOn(work, face)
  return names.length === 0 ? [] : [`Before the first coat plug or tape ${names.join(', ')}.`]
}

/** Names of the cuts that are masked while a face is coated. */
export function maskedOn(work: Work, face: Face | 'both'): string[] {
  return work.entries.cuts
    .filter(c => c.value.mask === true && (face === 'both' || c.value.through || c.value.face === face))
    .map(c => c.id)
}

/** The gap a part has in the end, its pilot, its class, its head and its hands. */
export function gapFacts(plan: Plan, work: Work, k: number): RunFact[] {
  const L = lengthsOf(work.shop)
  const fit = work.fits[k]!
  const { value } = work.entries.hardware[k]!
  const { clearanceMm, wantedGapMm } = plan.hardware[k]!
  const out: RunFact[] = []
  if (clearanceMm !== null && fit.pilot === null)
    out.push(
      fact(
        'Gap on each side',
        L.signed(clearanceMm[1], 2),
        `${L.unit}, ${L.signed(clearanceMm[0], 2)} to ${L.signed(clearanceMm[2], 2)}${value.fitting === 'press' ? '' : `; wanted ${L.of(wantedGapMm, 2)}`}`
      )
    )
  const cut = fit.chain?.of === 'cut' ? work.piece.cuts[fit.chain.index]! : undefined
  const shaft = value.toleranceClass ?? fit.record.toleranceClass
  // A class says something of two parts of one size only.
  const alike =
    fit.part !== null && fit.chain !== null && Math.abs(fit.chain.drawnMm - fit.part.widthMm) < 0.02
  if (cut?.toleranceClass !== undefined && shaft !== undefined && fit.part !== null && alike) {
    const size = fit.part.widthMm
    const { leastMm, greatestMm } = fitMm(size, cut.toleranceClass, shaft)
    out.push(
      fact(
        'Class',
        `${L.of(size, 2)} ${cut.toleranceClass}/${shaft}`,
        `play ${L.signed(leastMm, 3)} to ${L.signed(greatestMm, 3)} ${L.unit}; below 0 it is tight`
      )
    )
  }
  const { pilot, record } = fit
  if (pilot !== null && pilot.never === null)
    out.push(
      fact(
        'Hole for it',
        `${L.of(pilot.lowMm, 1)} to ${L.of(pilot.highMm, 1)}`,
        `${L.unit} in ${pilot.into}${pilot.nearEnd ? ', near the end of the timber' : ''}`
      )
    )
  if (record.headMm !== undefined)
    out.push(fact('Countersink', `Ø ${L.of(record.headMm, 1)}`, `${L.unit}, 90°: until the head lies flush`))
  if (record.shaft !== null) {
    const { hour, minute, second } = record.shaft.handBoresMm
    out.push(
      fact(
        'Bores of the hands',
        `${range(hour, L)} hour, ${range(minute, L)} minute, ${range(second, L)} second`,
        `${L.unit}; push fit`
      )
    )
  }
  return out
}

function range([low, high]: readonly [number, number], L: Lengths): string {
  return low === high ? L.of(low, 1) : `${L.of(low, 1)}-${L.of(high, 1)}`
}

/** What to do when it goes in tight: by what closed the hole most. */
export function tightWords(work: Work, k: number): string[] {
  const fit = work.fits[k]!
  const { fitting } = work.entries.hardware[k]!.value
  if (fit.clearanceMm === null || fit.part === null) return []
  if (fitting === 'press')
    return ['Press it in square, with a block between. If it goes in by hand it is loose: glue it.']
  // With so much room it does not go in tight.
  if (fit.clearanceMm[0] > WORTH_MM) return []
  const does = TIGHT[worstOf(fit)] ?? 'take a hair off the wall with a file or a scraper'
  return [`If it goes in tight, do not press it: ${does}.`]
}

const TIGHT: Partial<Record<Cause, string>> = {
  coat: 'scrape the coat off the walls',
  season: 'take a hair off the walls that lie along the grain; in dry air the hole gets narrower still',
  cure: 'resin that cures on closes the hole; take a hair off its wall',
  former: 'the resin closed on the former; take a hair off its wall'
}

function worstOf(fit: HardwareFit): Cause {
  return fit.shares.reduce((a, b) => (b.sideMm[0] < a.sideMm[0] ? b : a)).cause
}

/** A gap that does not stay as it was drawn, by a tenth and more; else null. */
export function endGap(gapMm: number, clearance: PlanHardware['clearanceMm']): PlanHardware['clearanceMm'] {
  return clearance !== null && Math.abs(clearance[1] - gapMm) >= WORTH_MM ? clearance : null
}

/** The width a cut ends at, where that is another than it is cut at; and that it is masked. */
export function sizeFacts(work: Work, cut: number, size: CutSize | null, L: Lengths): string[] {
  const masked = work.piece.cuts[cut]!.mask === true ? ['masked when coated'] : []
  if (size === null || Math.abs(size.finalMm[1] - size.drawnMm) < WORTH_MM) return masked
  return [`ends ${size.measured === 'diameter' ? 'Ø ' : ''}${bandWords(size.finalMm, L)}`, ...masked]
}
