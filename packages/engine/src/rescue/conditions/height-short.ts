import { decimals, formatMm, formatVolume } from '../../quantity/format.ts'
import { area } from '../../shape/measure.ts'
import type { Condition, Refusal, TroubleCase, WayDraft } from '../condition.ts'
import { flattenMore, floodOver, topFace } from '../patch/cut-patch.ts'
import type { PourDocument } from '../patch/pour-patch.ts'
import { freeName, layerOn, levelIs, sameMix, tenth } from '../patch/pour-patch.ts'
import { heightTroubles } from './heights.ts'
import { askBy, bonding, howMuch, isPoured, notOn, pourSpot, TOP_UP_HAZARDS } from './spot.ts'

/** Play under a timber that is held down, mm, beyond what the document says it lies hollow (practice: a rule under it). */
const PLAY_MM = 1
/** A timber stands in a layer that is set when the layer ends this far over its base, mm, and a level was read when it is off by that (practice). */
const STANDS_MM = 0.5
const READ_MM = 0.05
/** A flood stands over what it fills up by this, mm (practice: it draws back at its edges). */
const OVER_MM = 0.5
/** Thicker than this no flood stays on a face, mm (practice). */
const MOST_FLOOD_MM = 4

/** A pour that stands lower than it was planned. */
export const heightShort: Condition = {
  kind: 'height short',
  about: 'a pour stands lower than planned',
  found: at => heightTroubles(at, 'short'),
  questions: at => [
    ...askBy(at, 'How much lower than planned does it stand, in mm?'),
    {
      key: 'lost',
      asks: 'Is the mould wet outside, or does the level still fall?',
      options: [
        { word: 'yes', means: 'find and stop the leak before anything is poured' },
        { word: 'no', means: 'nothing runs out any more' }
      ]
    },
    {
      key: 'mixed',
      asks: 'Did all that was mixed go in?',
      options: [
        { word: 'yes', means: 'then it went somewhere: out, or into a hollow' },
        { word: 'no', means: 'then what stayed in the vessels is what is missing' }
      ]
    },
    {
      key: 'under',
      asks: 'Could it have run under a timber? Answer with its name.',
      options: [],
      free: 'name'
    }
  ],
  refused,
  ways
}

// Resin under a timber stands as high as its volume over the area: what cannot be is refused with the arithmetic.
function refused(at: TroubleCase): Refusal[] {
  const name = at.answers.get('under')
  const { built } = at
  const timber = built.entries.timbers.find(t => t.id === name)
  if (name === undefined) return []
  if (timber === undefined)
    return [
      {
        key: 'under',
        says: `no timber is called “${name}”; there ${built.entries.timbers.length === 0 ? 'is none' : `are ${built.entries.timbers.map(t => t.id).join(', ')}`}`
      }
    ]
  const ml = missingMl(at)
  const mm2 = area(built.stack.geometry.timbers[timber.index]!.lower)
  const highMm = (ml * 1000) / mm2
  const spot = pourSpot(at)
  const under = built.entries.pours.filter(p => p.index < spot.index && p.value.kind === 'cast')
  const base = built.stack.geometry.timbers[timber.index]!.base
  const set = under.some(p => built.stack.pours[p.index]!.level > base + STANDS_MM)
  const roomMm = timber.value.level + PLAY_MM
  if (!set && highMm <= roomMm) return []
  const where = set
    ? `is already set in ${under.at(-1)!.id}, which is hard`
    : `lies at most ${formatMm(roomMm)} hollow`
  return [
    {
      key: 'under',
      says: `${formatVolume(ml)} under ${timber.id}, which covers ${decimals(mm2, 0)} mm², would stand ${decimals(highMm, highMm < 10 ? 1 : 0)} mm high; it ${where}: not possible. What else could it be: a leak, less mixed than thought, a base that is not level?`
    }
  ]
}

/** Volume between where the pour was to stand and where it stands, ml. */
function missingMl(at: TroubleCase): number {
  const { index } = pourSpot(at)
  const by = howMuch(at, 1)
  const was = at.plan.stack.pours[index]!
  const is = at.built.stack.pours[index]!
  const read = was.level - is.level
  return read > READ_MM ? was.filledMl - is.filledMl : (was.surfaceMm2 * by) / 1000
}

function ways(at: TroubleCase): WayDraft[] {
  const spot = pourSpot(at)
  const { index, entry, next, last } = spot
  const by = howMuch(at, 1)
  const wanted = at.plan.stack.pours[index]!.level
  const stands = wanted - by
  const { built } = at
  const bond = bonding(spot)
  const leaks = at.answers.get('lost') === 'yes'
  const seal = leaks
    ? ['find where it runs and stop it from outside first: clay, wax or hot glue, wiped dry']
    : []
  const marbled = built.piece.pours[index]!.marbling !== undefined
  const id = freeName(built, `${entry.id} top-up`)
  const cast = entry.value.kind === 'cast'
  const later = built.entries.pours.filter(
    p => p.index > index && p.value.kind === 'cast' && !isPoured(at, p.index)
  )
  const out: WayDraft[] = []
  out.push({
    id: 'top-up',
    does: `Pour ${tenth(by)} mm more of the same on it`,
    how: [...seal, ...bond.how, `mix and pour ${id} to ${formatMm(wanted)} as cast`],
    hazards: [...TOP_UP_HAZARDS],
    patch: layerOn(built, index, stands, {
      ...sameMix(built, index),
      id,
      height: tenth(wanted)
    } as PourDocument),
    gives: [
      ...(marbled
        ? [
            `its marbled face lies ${formatMm(by)} under a plain layer: it is buried, and shows only as far as that lets through`
          ]
        : []),
      ...(bond.open ? [] : ['a seam between the two may show from the edge'])
    ],
    handsMin: bond.open ? 0 : 20,
    waitDays: 0,
    chance: 'usually works',
    excluded: notOn(at, spot),
    favoured:
      at.answers.get('mixed') === 'no' ? 'what is missing stayed in the vessels: a top-up brings it' : null
  })
  out.push({
    id: 'next-takes-it',
    does: next === null ? 'Let the next layer take it up' : `Let ${next.id} be ${tenth(by)} mm thicker`,
    how: [...seal, `pour ${next?.id ?? 'the next layer'} to the height it was to have`],
    hazards: ['mixing-resin', 'pouring', 'leftover-in-cup'],
    patch:
      next === null
        ? []
        : [
            ...levelIs(built, index, stands),
            ...levelIs(built, next.index, at.plan.stack.pours[next.index]!.level)
          ],
    gives: [
      `${entry.id} stays ${formatMm(by)} thinner${built.piece.pours[index]!.opaque ? ', and hides less' : ''}`
    ],
    handsMin: 0,
    waitDays: 0,
    chance: 'usually works',
    excluded: next === null || !cast ? 'no layer is left to pour on it' : null
  })
  out.push({
    id: 'thinner-piece',
    does: `Let the piece be ${tenth(by)} mm thinner`,
    how: [
      ...seal,
      `flatten ${formatMm(by)} more off the ${topFace(built)}, so that timber and resin are level again`
    ],
    hazards: ['machine-cutting', 'router-by-hand', 'sanding-cured-resin', 'sanding-timber'],
    patch: [
      ...(cast ? levelIs(built, index, stands) : []),
      ...later.flatMap(p => levelIs(built, p.index, at.plan.stack.pours[p.index]!.level - by)),
      ...flattenMore(built, topFace(built), by)
    ],
    gives: [`${formatMm(by)} of the thickness`],
    handsMin: 0,
    waitDays: 0,
    chance: 'usually works',
    excluded:
      spot.covered && next === null ? 'what stands on it hides how low it is: nothing has to come off' : null
  })
  out.push({
    id: 'flood',
    does: `Close it with a flood of ${tenth(by + OVER_MM)} mm on the ${topFace(built)}`,
    how: ['once it is flattened and sanded: a dam round it, then a flood to the level of the timber'],
    hazards: ['sanding-cured-resin', 'mixing-resin', 'pouring', 'leftover-in-cup'],
    patch: [
      ...(cast ? levelIs(built, index, stands) : []),
      ...floodOver(built, topFace(built), by + OVER_MM, { ...sameMix(built, index), resin: 'thin' })
    ],
    gives: [`resin lies over the timber of the ${topFace(built)} too`],
    handsMin: 30,
    waitDays: 0,
    chance: 'about even',
    excluded: !last
      ? 'layers come on it: they take it up'
      : by > MOST_FLOOD_MM
        ? `a flood stays on a face up to about ${MOST_FLOOD_MM} mm`
        : null
  })
  return out
}
