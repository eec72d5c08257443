import { decimals, formatMass, formatMinutes } from '../quantity/format.ts'
import { holdsBubbleBelowMm } from '../resin/bubble.ts'
import { packsG, sinksMm, sphereOfMm } from '../resin/settling.ts'
import type { Check, Found } from './finding.ts'
import { setValue } from './fix.ts'
import { recoatPairs } from './recoat-window.ts'
import type { Work } from './work.ts'

/** Stones that do not stay where they are drawn, or hold air between them. */
export const stonesSink: Check = {
  id: 'stones-sink',
  about: 'stones that sink, float or hold air where they are put',
  cases: ['O8'],
  run: work =>
    work.entries.pours.flatMap(p =>
      p.value.stones.flatMap((_, j) => [
        ...floats(work, p.index, j),
        ...sinks(work, p.index, j),
        ...holdsAir(work, p.index, j),
        ...overfull(work, p.index, j)
      ])
    )
}

/** A layer less than this many stones deep leaves no height to time them in (judgement). */
const SHALLOW = 3
/** What is meant to lie on the floor may start this far over it, mm. */
const ON_FLOOR_MM = 0.5
const BASIS =
  'fall by drag after Schiller and Naumann in the thickening of a generic class; densities of the kind: handbook'

// Size of a stone as the ball of its volume, mm: smallest of the placed ones, else the middle of the kind.
function ballMm(work: Work, i: number, j: number): number {
  const { placed } = work.piece.pours[i]!.stones[j]!
  const [low, high] = work.materials.stones[i]![j]!.sizeMm
  return placed === undefined ? Math.sqrt(low * high) : Math.max(...placed.map(p => sphereOfMm(p.size)))
}

// Whether the pour has a layer of resin below it that can be tacky when the stones are set.
function hasLayerBelow(work: Work, i: number): boolean {
  return recoatPairs(work).some(({ next }) => next.index === i)
}

/** Where stones are held: on the layer below, or, where there is none, on a first thin layer of the same pour. */
function tackWords(work: Work, i: number): string {
  return hasLayerBelow(work, i)
    ? 'Set them on the tacky layer below'
    : 'Pour it in two, the first just under them, and set them on that while it is tacky'
}

function onTheTack(work: Work, i: number, j: number): Pick<Found, 'fix' | 'fixSays'> {
  if (!hasLayerBelow(work, i)) return {}
  const { name } = work.materials.stones[i]![j]!
  return {
    fix: setValue(work.document, `${work.entries.pours[i]!.at}/stones/${j}/set`, 'on the tacky layer'),
    fixSays: `Set the ${name} on the tacky layer below`
  }
}

function floats(work: Work, i: number, j: number): Found[] {
  const { id, at, value } = work.entries.pours[i]!
  const record = work.materials.stones[i]![j]!
  const liquid = work.materials.resins[i]!.densityGMl * 1000
  if (value.stones[j]!.set === 'on the tacky layer' || record.densityKgM3 >= liquid) return []
  return [
    {
      severity: 'caution',
      at: `${at}/stones/${j}/set`,
      says: `${record.name} (${decimals(record.densityKgM3, 0)} kg/m³) are lighter than ${id} (${decimals(liquid, 0)}): they come up to its face. ${tackWords(work, i)} so that it holds them, or tie them down.`,
      value: record.densityKgM3,
      unit: 'kg/m³',
      limit: liquid,
      basis: 'densities of kind and mix: catalogue',
      settledBy: 'one of them in a cup of the mix',
      ...onTheTack(work, i, j)
    }
  ]
}

function sinks(work: Work, i: number, j: number): Found[] {
  const { id, at, value } = work.entries.pours[i]!
  const cast = work.casts[i]
  const record = work.materials.stones[i]![j]!
  const stones = value.stones[j]!
  const liquid = work.materials.resins[i]!.densityGMl * 1000
  const { floor, liquidDepth, liquidLevel } = work.stack.pours[i]!
  const from = stones.placed ? Math.min(...stones.placed.map(p => p.height ?? floor)) : (stones.from ?? floor)
  if (!cast || stones.set !== 'into the pour' || record.densityKgM3 <= liquid || from < floor + ON_FLOOR_MM)
    return []
  const ball = ballMm(work, i, j)
  const grain = { diameterMm: ball, densityKgM3: record.densityKgM3, liquidKgM3: liquid }
  const falls = sinksMm(grain, cast.curve)
  const allowed = liquidLevel - ball - from
  if (falls <= Math.max(0, allowed)) return []
  const shallow = liquidDepth < SHALLOW * ball
  const window = cast.windows.stones
  const close = window?.close ?? null
  if (shallow || window === null || window.open === null || close === null || close - window.open < LEAST_MIN)
    return [
      {
        severity: 'caution',
        at: `${at}/stones/${j}/set`,
        says: `${record.name} in ${id} are to stay ${decimals(from - floor, 1)} mm over its floor by timing: ${shallow ? `in ${decimals(liquidDepth, 1)} mm of resin stones of ${decimals(ball, 0)} mm touch the floor or stand out whenever they go in` : 'they sink until the mix is too thick to close round them, and in thick resin they hold air'}. ${tackWords(work, i)}; where single stones lie is then known.`,
        value: Math.min(falls, liquidDepth),
        unit: 'mm',
        limit: Math.max(0, allowed),
        basis: `${BASIS}; three stones deep: judgement`,
        settledBy: 'one stone in a cup as deep as the pour',
        ...onTheTack(work, i, j)
      }
    ]
  return [
    {
      severity: 'note',
      at: `${at}/stones/${j}/set`,
      says: `${record.name} put into ${id} at once sink to its floor; from about ${formatMinutes(window.open)} to ${formatMinutes(close)} after pouring they stay where they are wanted. Where single ones come to lie is not known beforehand.`,
      value: Math.min(falls, liquidDepth),
      unit: 'mm',
      basis: BASIS,
      settledBy: 'one stone in a cup as deep as the pour'
    }
  ]
}

/** Less than this between opening and closing cannot be met, min (practice). */
const LEAST_MIN = 10

/**
 * Resin that is poured over a heap shuts air in where its pores are narrower than a bubble needs to rise: pores of
 * a packed bed are (2/3)·(1 − φ)/φ of a grain wide (hydraulic diameter, textbook of packed beds).
 */
function holdsAir(work: Work, i: number, j: number): Found[] {
  const { id, at, value } = work.entries.pours[i]!
  const record = work.materials.stones[i]![j]!
  const stones = value.stones[j]!
  if (stones.set !== 'before the pour' || stones.placed !== undefined || record.kind === 'organic') return []
  const { floor, level } = work.stack.pours[i]!
  const thick = Math.min(stones.to ?? level, level) - Math.max(stones.from ?? floor, floor)
  const size = Math.sqrt(record.sizeMm[0] * record.sizeMm[1])
  const share = stones.fill ?? (record.packing[0] + record.packing[1]) / 2
  const pore = ((2 / 3) * (1 - share) * size) / share
  const limit = holdsBubbleBelowMm(work.materials.resins[i]!.densityGMl * 1000)
  if (thick < 2 * size || pore >= limit) return []
  return [
    {
      severity: 'caution',
      at: `${at}/stones/${j}/set`,
      says: `${record.name} in ${id} lie ${decimals(thick / size, 0)} deep before the resin comes: the gaps between them are about ${decimals(pore, 1)} mm, and under ${decimals(limit, 1)} mm surface tension holds bubbles in them. Pour a third first and stir the stones into it, thin and by handfuls${hasLayerBelow(work, i) ? ', or set them on the tacky layer below' : ''}.`,
      value: pore,
      unit: 'mm',
      limit,
      basis:
        'pores of a packed bed (hydraulic diameter), bubble held in a closed tube (Bretherton 1961); usual size of the kind',
      settledBy: 'a glass of these stones filled with the mix',
      ...onTheTack(work, i, j)
    }
  ]
}

function overfull(work: Work, i: number, j: number): Found[] {
  const { id, at, value } = work.entries.pours[i]!
  const record = work.materials.stones[i]![j]!
  const { fill } = value.stones[j]!
  const [low, high] = record.packing
  if (fill === undefined || fill <= high + 1e-9) return []
  const solidMl = work.stack.pours[i]!.stonesMl / value.stones.length
  const [least, most] = packsG(solidMl / fill, record.packing, record.densityKgM3)
  return [
    {
      severity: 'caution',
      at: `${at}/stones/${j}/fill`,
      says: `${record.name} in ${id} are drawn ${decimals(fill * 100, 0)} % solid; they pack to ${decimals(low * 100, 0)} to ${decimals(high * 100, 0)} %, so ${formatMass(least)} to ${formatMass(most)} go in, and more resin than reckoned.`,
      value: fill * 100,
      unit: '%',
      limit: high * 100,
      basis: 'random packing of the form: handbook ranges (memory)',
      settledBy: 'the mass of the stones that fill a litre, shaken',
      fix: setValue(work.document, `${at}/stones/${j}/fill`, high),
      fixSays: `${record.name} ${decimals(high * 100, 0)} % solid`
    }
  ]
}
