import type { HoleFault } from '../cuts/pins/offer.ts'
import { decimals } from '../quantity/format.ts'
import type { Check, Found } from './finding.ts'
import { placesFix } from './pin-fix.ts'
import type { Work } from './work.ts'

/** Pins where the casting offers no hole for them. */
export const pinsMiss: Check = {
  id: 'pins-miss',
  about: 'a pin outside the casting, in a void, in the piece itself, over stones or too near to an edge',
  cases: ['O4'],
  run
}

const BASIS =
  'the casting on the day the holes are drilled; 1.5 diameters to its edge, 3 mm to stones: common practice, no source'

function run(work: Work): Found[] {
  const { pins, given } = work.pins
  if (!given) return []
  const bad = pins.flatMap((p, i) =>
    p.fault === null || p.fault.kind === 'path' ? [] : [{ ...p, fault: p.fault, i }]
  )
  if (bad.length === 0) return []
  const fix = placesFix(work)
  return bad.map(({ x, y, fault, diameterMm, i }): Found => {
    const at = `pin ${i + 1} at ${decimals(x, 0)}, ${decimals(y, 0)}`
    const stop = fault.kind === 'misses' || fault.kind === 'hollow'
    return {
      severity: stop ? 'stop' : 'caution',
      at: `/pins/at/${i}`,
      says: `${at} ${WORDS[fault.kind](fault, diameterMm)}`,
      ...(fault.kind === 'hollow' ? {} : { value: fault.mm, unit: 'mm', limit: fault.wantedMm }),
      basis: BASIS,
      ...fix
    }
  })
}

const WORDS: Readonly<Record<HoleFault['kind'], (f: HoleFault, d: number) => string>> = {
  // Told by a check of its own.
  path: () => '',
  misses: f => `stands ${decimals(f.mm, 1)} mm outside the casting: nothing is tied to it.`,
  hollow: () => 'stands where the casting is not solid from face to face: it holds nothing there.',
  wall: (f, d) =>
    `is ${decimals(f.mm, 1)} mm from the edge of the casting; a hole of ${decimals(d, 1)} wants ${decimals(f.wantedMm, 1)}, or it breaks out when the piece is pressed on it.`,
  inside: () => 'stands in the piece: its hole stays to be seen.',
  stone: f =>
    `comes within ${decimals(Math.max(0, f.mm), 1)} mm of stones of ${f.what}: the drill wanders off a stone or breaks on it.`,
  'keep clear': f => `comes within ${decimals(Math.max(0, f.mm), 1)} mm of a place to keep clear of.`
}
