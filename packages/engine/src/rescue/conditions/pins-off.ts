import { latest } from '../../cuts/pins/thickness-read.ts'
import { setValue } from '../../findings/fix.ts'
import { decimals, formatMm } from '../../quantity/format.ts'
import type { Condition, RescueCase, Trouble, TroubleCase, WayDraft } from '../condition.ts'
import { askBy, howMuch } from './spot.ts'

/** Pins that were found nearer together or farther apart than the holes of the piece take. */
export const pinsOff: Condition = {
  kind: 'pins off',
  about: 'pins stand nearer together or farther apart than the holes of the piece take',
  found,
  questions: at => [
    ...askBy(at, 'How far is the distance of the pins from the one drawn, in mm?'),
    {
      key: 'drilled',
      asks: 'Are the holes in the piece drilled?',
      options: [
        {
          word: 'yes',
          means: 'then what is in the piece stays, and the bed or the way of laying it changes'
        },
        { word: 'no', means: 'then they can go where the pins are' }
      ]
    }
  ],
  refused: () => [],
  ways
}

/** What sums of distances are off by in floating point, mm. */
const HAIR_MM = 1e-9

/**
 * By how much the distance of the pins may differ from that of their holes, mm: the play of both halved (two-pins.ts), and
 * half of what a slot is longer than wide. How the piece lies turned or shifted goes into its frame and is no trouble.
 */
function taken({ built }: RescueCase): number | null {
  const { pins, misfit } = built.pins
  if (misfit === null || pins.length < 2) return null
  return misfit.pitchTakenMm + Math.max(pins[0]!.slotMm, pins[1]!.slotMm) / 2
}

/** The last reading of the first two pins: how far apart, mm, and by how much more than drawn; null: not both are read. */
function distance({ built }: RescueCase) {
  const { pins } = built.pins
  const read = [1, 2].map(k =>
    latest(built.readings.flatMap(r => (r.kind === 'pin' && r.pin === k ? [r] : [])))
  )
  const [first, second] = read
  if (pins.length < 2 || first == null || second == null) return null
  const measured = Math.hypot(second.x - first.x, second.y - first.y)
  const drawn = Math.hypot(pins[1]!.x - pins[0]!.x, pins[1]!.y - pins[0]!.y)
  return { measured, off: measured - drawn, readings: [first.id, second.id] }
}

function found(at: RescueCase): Trouble[] {
  const may = taken(at)
  const read = distance(at)
  if (may === null || read === null) return []
  const { measured, off, readings } = read
  if (Math.abs(off) <= may + HAIR_MM) return []
  const slotted = at.built.pins.pins.slice(0, 2).some(p => p.slotMm > 0)
  return [
    {
      kind: 'pins off',
      of: null,
      byMm: Math.round(Math.abs(off) * 1000) / 1000,
      says: `the pins were found ${decimals(measured, 2)} mm apart, ${decimals(Math.abs(off), 2)} mm ${off > 0 ? 'more' : 'less'} than drawn; play${slotted ? ' and slot take' : ' takes'} ${decimals(may, 2)} mm`,
      readings
    }
  ]
}

function ways(at: TroubleCase): WayDraft[] {
  const { built } = at
  const { document } = built
  const { pins, misfit } = built.pins
  const by = howMuch(at, 0.5)
  const none = misfit === null || pins.length < 2 ? 'the piece has no pins' : null
  const drilled = at.answers.get('drilled')
  const slotted = pins.slice(0, 2).some(p => p.slotMm > 0)
  const places = none === null ? asFound(at, by) : null
  const tried = 'lay the piece on its pins by hand before anything is clamped: it must go on without force'
  // Of two places found each may be off by what the machine repeats to: together twice that, as in misfit.ts.
  const scatter = (taken(at) ?? 0) + (misfit?.machineMm ?? 0)
  return [
    {
      id: 'again',
      does: 'Find both pins once more',
      how: ['wipe the pins and the tip, come to each from the same side, and log pin'],
      hazards: [],
      patch: [],
      gives: [],
      handsMin: 5,
      waitDays: 0,
      chance: 'about even',
      excluded:
        none ??
        (by > scatter + HAIR_MM
          ? `${formatMm(by)} is more than play and what the machine repeats to, ${decimals(scatter, 2)} mm together`
          : null),
      favoured: by > scatter + HAIR_MM ? null : 'what the machine repeats to may be all of it'
    },
    {
      id: 'bed',
      does: 'Drill the bed anew for the second pin',
      how: [
        'screw a fresh board to the bed, or plug the hole with hardwood and glue, flush when it is dry',
        'drill it where the plan has it, from the zero of the first pin',
        'find both pins anew, and log pin',
        tried
      ],
      hazards: ['machine-cutting'],
      patch: [],
      gives: [],
      handsMin: 30,
      waitDays: 0,
      chance: 'usually works',
      excluded: none
    },
    {
      id: 'follow',
      does: 'Drill the holes of the piece where the pins are',
      how: ['have the programs of both settings written anew for these places, and prove them', tried],
      hazards: ['machine-cutting'],
      patch: places === null ? [] : setValue(document, '/pins/at', places),
      gives: [],
      handsMin: 10,
      waitDays: 0,
      chance: 'usually works',
      excluded: none ?? (drilled === 'yes' ? 'the holes in the piece are drilled' : null),
      favoured: drilled === 'no' ? 'nothing is drilled in the piece yet' : null
    },
    {
      id: 'slot',
      does: 'Make the second hole of the piece a slot',
      how: [
        'mill it in line with the pins and no wider: across the line it still has to hold',
        'find both pins anew, and log pin',
        tried
      ],
      hazards: ['machine-cutting'],
      patch: none !== null || slotted ? [] : setValue(document, '/pins/slot', true),
      gives: [],
      handsMin: 15,
      waitDays: 0,
      chance: 'usually works',
      excluded: none ?? (slotted ? 'one of its holes is a slot already' : null)
    },
    {
      id: 'marks',
      does: 'Turn it over without the second pin, by marks',
      how: [
        'leave the second pin out, and lay the piece on the first',
        'touch two marks that were cut from the first face, or three places of its edges, and log place or edge',
        'take the programs with the frame that was found'
      ],
      hazards: ['machine-cutting'],
      patch: [],
      gives: [`a second pin that holds it: clamps alone keep it from turning, ${formatMm(by)} or not`],
      handsMin: 25,
      waitDays: 0,
      chance: 'about even',
      excluded: none,
      favoured: drilled === 'yes' ? 'what is drilled in the piece stays' : null
    }
  ]
}

// The first pin where it is drawn, the second along the line from it as far as it was found.
function asFound(at: TroubleCase, byMm: number): number[][] {
  const { pins } = at.built.pins
  const [first, second] = [pins[0]!, pins[1]!]
  const drawn = Math.hypot(second.x - first.x, second.y - first.y)
  const off = (distance(at)?.off ?? 0) < 0 ? -byMm : byMm
  const k = (drawn + off) / drawn
  const hundredth = (x: number) => Math.round(x * 100) / 100
  return pins.map((p, i) =>
    i === 1
      ? [hundredth(first.x + k * (p.x - first.x)), hundredth(first.y + k * (p.y - first.y))]
      : [p.x, p.y]
  )
}
