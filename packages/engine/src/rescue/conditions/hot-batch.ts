import { batchCount } from '../../findings/batches.ts'
import type { Operation } from '../../piece/patch.ts'
import { pouredG } from '../../piece/standing-readings.ts'
import { decimals, formatC } from '../../quantity/format.ts'
import { CAUTION_ABOVE_C } from '../../resin/limits.ts'
import type { Condition, RescueCase, Trouble, TroubleCase, WayDraft } from '../condition.ts'
import type { PourDocument } from '../patch/pour-patch.ts'
import { freeName, levelIs, mixedMore, pourAfter, sameMix, tenth } from '../patch/pour-patch.ts'
import { curedAnewDays, isPoured, pourSpot } from './spot.ts'

/** A layer is not parted into halves thinner than this, mm (practice). */
const LEAST_HALF_MM = 4
/** Resin is mixed cooler by this, K: rates fall by about a quarter (practice); never under that, °C: it thickens, and cures too slowly to be told. */
const COOLER_K = 4
const LEAST_C = 8
/** A hot casting is left alone for so long before it is looked over, days (practice). */
const COOL_DAYS = 1
/** From this share of its mass on a pour counts as poured whole: the rest stays on cup and stick (practice). */
const POURED_SHARE = 0.95
/** Where nothing says how warm it is poured, °C (practice). */
const ROOM_C = 20

/** A cup or a casting that gets hotter than it should. */
export const hotBatch: Condition = {
  kind: 'hot batch',
  about: 'a cup or a casting gets hotter than it was expected to',
  found,
  questions: () => [
    {
      key: 'where',
      asks: 'Is it hot in the cup or in the mould?',
      options: [
        { word: 'cup', means: 'it is poured out thin, outdoors, and mixed anew' },
        { word: 'mould', means: 'it is left alone, and what is still to pour is poured thinner' }
      ]
    },
    {
      key: 'smokes',
      asks: 'Does it smoke or foam?',
      options: [
        { word: 'yes', means: 'leave the room; nothing is saved before the fumes are gone' },
        { word: 'no', means: 'it is hot only' }
      ]
    },
    {
      key: 'marks',
      asks: 'Once cold: cracks, amber, timber or mould that let go?',
      options: [
        { word: 'yes', means: 'what is spoiled comes out before anything is poured on it' },
        { word: 'no', means: 'it can be built on' }
      ]
    }
  ],
  refused: () => [],
  ways
}

// Hotter than the hot end of the pour's own band, or past what is cautioned of.
function found({ built }: RescueCase): Trouble[] {
  return built.entries.pours.flatMap(({ id, index }): Trouble[] => {
    const read = built.readings.flatMap(r => (r.kind === 'temperature' && r.pour === id ? [r] : []))
    if (read.length === 0) return []
    const hottest = read.reduce((a, b) => (b.temperature > a.temperature ? b : a))
    const may = Math.min(built.casts[index]?.peakBandC[1] ?? CAUTION_ABOVE_C, CAUTION_ABOVE_C)
    if (hottest.temperature <= may) return []
    return [
      {
        kind: 'hot batch',
        of: id,
        byMm: null,
        says: `${id} was read at ${formatC(hottest.temperature)}; ${formatC(may)} is the hot end of what it was expected to reach`,
        readings: [hottest.id]
      }
    ]
  })
}

function ways(at: TroubleCase): WayDraft[] {
  const { built } = at
  const spot = pourSpot(at)
  const { entry, index } = spot
  const where = at.answers.get('where')
  const marks = at.answers.get('marks')
  const left = built.entries.pours.filter(p => p.value.kind === 'cast' && !isPoured(at, p.index))
  const deepest = [...left].sort(
    (a, b) => built.stack.pours[b.index]!.depth - built.stack.pours[a.index]!.depth
  )[0]
  const halves = deepest === undefined ? [] : halved(at, deepest.index)
  const batches = batchCount(built, index) + 1
  const coolerC = Math.max(LEAST_C, Math.round((built.casts[index]?.startC ?? ROOM_C) - COOLER_K))
  const rest = [...left.map(p => p.index), ...(where === 'cup' ? [index] : [])]
  const fumes =
    at.answers.get('smokes') === 'yes'
      ? ['leave the room, doors and windows open, and come back when the fumes are gone; no water on it']
      : []
  const coolDown = [
    ...fumes,
    'let it be: pour nothing on it, move air over it, keep away from the fumes',
    'when it is cold, look it over: cracks, amber, bubbles, timber or mould that let go'
  ]
  return [
    {
      id: 'smaller-batches',
      does: `Mix what is left of ${entry.id} in ${batches} batches`,
      how: [
        ...fumes,
        'spread the hot cup thin in a metal tray, outdoors, and watch it until it is cold',
        `mix ${entry.id} anew in ${batches} batches, each poured before the next is mixed`
      ],
      hazards: ['leftover-in-cup', 'mixing-resin', 'pouring'],
      patch: [
        {
          op: built.document.pours[index]!.batches === undefined ? 'add' : 'replace',
          path: `/pours/${index}/batches`,
          value: batches
        }
      ],
      gives: ['what was in the cup'],
      handsMin: 20,
      waitDays: 0,
      chance: 'usually works',
      excluded:
        where === 'mould'
          ? 'it is hot in the mould, not in the cup'
          : where === undefined &&
              pouredG(built.readings, entry.id) >=
                POURED_SHARE * built.stack.pours[index]!.massG * built.quantity.blanks
            ? `all of ${entry.id} is poured: none is left to mix`
            : null,
      favoured: where === 'cup' ? 'it is hot in the cup' : null
    },
    {
      id: 'thinner-layers',
      does: deepest === undefined ? 'Pour the rest in thinner layers' : `Pour ${deepest.id} in two layers`,
      how: [...coolDown, 'pour the rest in layers half as deep'],
      hazards: ['hot-piece', 'mixing-resin', 'pouring', 'leftover-in-cup'],
      patch: halves,
      gives: ['a seam more, and a wait more'],
      handsMin: 15,
      waitDays: 0,
      chance: 'usually works',
      excluded:
        deepest === undefined
          ? 'no layer is left to pour'
          : halves.length === 0
            ? `${deepest.id} is too thin to part`
            : null,
      favoured: where === 'mould' ? 'it is hot in the mould' : null
    },
    {
      id: 'cooler',
      does: `Mix the rest ${formatC(coolerC)} cool`,
      how: [
        ...coolDown,
        `keep the bottles at ${formatC(coolerC)} before they are mixed, and pour in the coolest hours`
      ],
      hazards: ['hot-piece', 'mixing-resin', 'pouring', 'leftover-in-cup'],
      patch: rest.map(
        (i): Operation => ({
          op: built.document.pours[i]!.startTemperature === undefined ? 'add' : 'replace',
          path: `/pours/${i}/startTemperature`,
          value: coolerC
        })
      ),
      gives: ['it cures more slowly'],
      handsMin: 10,
      waitDays: 0,
      chance: 'about even',
      excluded: rest.length === 0 ? 'no layer is left to pour' : null
    },
    {
      id: 'go-on',
      does: 'Let it cool, look it over, and go on as planned',
      how: coolDown,
      hazards: ['hot-piece'],
      patch: [],
      gives: ['it may be a shade more yellow'],
      handsMin: 10,
      waitDays: COOL_DAYS,
      chance: 'about even',
      excluded:
        marks === 'yes'
          ? 'it is marked: what is spoiled comes out first'
          : where === 'cup'
            ? 'what set in the cup is not in the piece'
            : null,
      favoured: marks === 'no' ? 'it shows no marks' : null
    },
    {
      id: 'cut-out',
      does: `Rout what is spoiled out of ${entry.id} and pour it anew`,
      how: [
        ...coolDown,
        'rout or chisel out what is cracked or amber, down to sound resin',
        'sand the hollow matt, wipe it, and pour it in two thin layers',
        'let it cure as long as the first pour would have'
      ],
      hazards: ['router-by-hand', 'sanding-cured-resin', 'mixing-resin', 'pouring', 'leftover-in-cup'],
      patch: mixedMore(built, index, built.stack.pours[index]!.massG),
      gives: [
        `${decimals(built.stack.pours[index]!.massG, 0)} g of resin once more`,
        'a seam round what was poured anew'
      ],
      handsMin: 120,
      waitDays: COOL_DAYS + curedAnewDays(spot),
      chance: 'about even',
      excluded:
        marks === 'no'
          ? 'it shows no marks'
          : where === 'cup'
            ? 'what set in the cup is not in the piece'
            : null,
      favoured: marks === 'yes' ? 'it is marked' : null
    }
  ]
}

// A pour parted at half its depth: the lower half keeps its place and its stones, the upper one ends where it ended.
function halved({ built }: TroubleCase, index: number): Operation[] {
  const { floor, level, depth } = built.stack.pours[index]!
  if (depth < 2 * LEAST_HALF_MM || built.document.pours[index]!.stones !== undefined) return []
  const id = freeName(built, `${built.entries.pours[index]!.id} upper half`)
  const upper = { ...sameMix(built, index), id, height: tenth(level) } as PourDocument
  return [...levelIs(built, index, (floor + level) / 2), ...pourAfter(built, index, upper)]
}
