import { crossingS } from '../../src/resin/conversion.ts'
import { bodyHistory } from '../../src/resin/cup.ts'
import { fitCup } from '../../src/resin/fit/cup-fit.ts'
import type { CupTest } from '../../src/resin/fit/cup-test.ts'
import { predictionBands } from '../../src/resin/fit/prediction.ts'
import { runSlab } from '../../src/resin/slab.ts'
import { SYRUP_PAS } from '../../src/resin/thickening.ts'
import type { Truth } from './cup-world.ts'
import { run, seeded, shown } from './cup-world.ts'
import { CLASSES } from './sets.ts'

/** What one seeded trial asks, and whether the band held it. */
export interface Asked {
  readonly what: string
  readonly true: number
  readonly central: number
  readonly low: number
  readonly high: number
}
export interface Trial {
  readonly kind: keyof typeof CLASSES
  readonly asked: readonly Asked[]
  readonly fitMs: number
  readonly about: string
  readonly noiseK: number
}

/** Depths poured next: inside what the class is made for, and at its edge. */
const DEPTH = { deep: [30, 55], medium: [5, 11], thin: [2, 3.5] } as const
/** Air and board below in series, W/(m²·K). */
const FLOOR = 1 / (1 / 6 + 0.018 / 0.12)

/** Makes a world of the seed, tests a cup in it, fits, predicts a second cup and a slab, and looks what they do. */
export function trial(seed: number): Trial {
  const random = seeded(seed)
  const between = (low: number, high: number): number => low + (high - low) * random()
  const times = (by: number): number => Math.exp(between(-Math.log(by), Math.log(by)))
  const kind = (['deep', 'medium', 'thin'] as const)[Math.floor(random() * 3)]!
  const base = CLASSES[kind]
  const { kinetics: c, flow } = base
  const shift = between(-7000, 7000)
  const speed = times(2)
  const truth: Truth = {
    k2: c.k2At25PerS * speed,
    k1: c.k2At25PerS * speed * c.k1OverK2At25 * times(2.2),
    e1: c.e1JPerMol + shift + between(-2000, 2000),
    e2: c.e2JPerMol + shift,
    m: between(0.8, 1.2),
    n: between(1.6, 2.2),
    heat: c.heatJPerKg * times(1.4),
    gel: c.gelConversion + between(-0.05, 0.05),
    tg: [c.tg0C + between(-5, 5), c.tgInfC + between(-8, 8), 0.42],
    eta25: flow.eta25PaS * times(1.5),
    etaE: flow.etaEJPerMol + between(-5000, 5000),
    c1: flow.c1 + between(-0.8, 0.8),
    c2: flow.c2 + between(-0.4, 0.4),
    strings: 3 * times(2),
    hCup: 9 * times(1.35)
  }
  // the cup
  const massG = kind === 'deep' ? between(300, 1500) : between(60, 300)
  const diameterMm = Math.cbrt((massG / 1.1) * 1000 * (4 / Math.PI)) * between(0.85, 1.3)
  const roomC = between(18, 26)
  const startC = roomC + between(-1, 3)
  const cup = (g: number, d: number, j: 1 | 2, room: number, start: number) => {
    const ml = g / 1.1
    const high = (ml * 1000) / ((Math.PI * d * d) / 4)
    const va = (ml * 1000) / ((Math.PI * d * d) / 2 + Math.PI * d * high) / 1000
    return {
      va,
      body: { j, sizeM: (j + 1) * va, hOuter: truth.hCup, hInner: 0, roomC: room, startC: start }
    }
  }
  const j = random() < 0.5 ? 1 : 2
  const horizonS = { deep: 60, medium: 14, thin: 5 }[kind] * 3600
  const first = cup(massG, diameterMm, j, roomC, startC)
  const told = run(truth, { ...first.body, untilS: horizonS })
  let top = 0
  told.centreC.forEach((x, i) => {
    if (x > told.centreC[top]!) top = i
  })
  const peakMin = told.timeS[top]! / 60
  const partial = random()
  const from = partial < 0.15 ? peakMin * between(0.2, 0.4) : 0
  const end = Math.min(
    horizonS / 60,
    partial > 0.8 ? peakMin * between(0.7, 0.95) : peakMin * between(1.2, 2)
  )
  const every = Math.max(1, Math.round(end / between(20, 90)))
  const gap = partial > 0.3 && partial < 0.45 ? [end * 0.3, end * 0.5] : [-1, -1]
  const at: number[] = []
  for (let t = Math.ceil(from); t <= end; t += every) if (t < gap[0]! || t > gap[1]!) at.push(t)
  // The clock was started a little before or after the parts met.
  const zeroMin = between(-0.8, 0.8)
  const readings = shown(
    told,
    at.map(t => Math.max(0, t + zeroMin)),
    between(20, 60),
    { sigmaK: between(0.2, 0.8), hangs: between(0.2, 0.8) },
    random
  ).map((r, i) => ({ ...r, timeMin: at[i]! }))
  const bell = (): number => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random())
  const said = (min: number): number | null =>
    min > end || min < from || random() < 0.15
      ? null
      : Math.max(1, Math.round(min - zeroMin + bell() * Math.hypot(1.5, 0.03 * min)))
  const test: CupTest = {
    massG,
    diameterMm,
    roomC: roomC + bell() * 0.5,
    startC: null,
    readings,
    stringsMin: said(told.stringsMin),
    gelledMin: said(told.middleGelMin)
  }
  const started = performance.now()
  const fit = fitCup(test, base)
  const fitMs = performance.now() - started
  // what comes next: a larger cup, and a slab
  const room2 = between(18, 25)
  const mass2 = massG * between(1.2, 2.5)
  const second = cup(mass2, diameterMm * Math.cbrt(mass2 / massG), j, room2, room2)
  const depthMm = between(DEPTH[kind][0], DEPTH[kind][1])
  // Another batch: weighed by hand anew.
  const batch = Math.exp(0.03 * bell())
  const later: Truth = { ...truth, k1: truth.k1 * batch, k2: truth.k2 * batch }
  const trueCup = run(later, { ...second.body, untilS: horizonS * 1.5 })
  const trueSlab = run(later, {
    j: 0,
    sizeM: depthMm / 1000,
    hOuter: 9,
    hInner: FLOOR,
    roomC: room2,
    startC: room2,
    untilS: horizonS * 2
  })
  const big = horizonS * 3
  const bands = predictionBands(fit, ({ model, modelInCup, hCupWm2K }) => {
    const next = bodyHistory({
      resin: modelInCup,
      volumePerAreaMm: second.va * 1000,
      roomC: room2,
      hWm2K: hCupWm2K,
      effort: 'quick',
      untilH: (horizonS * 1.5) / 3600
    })
    const slab = runSlab(
      { resin: model, depthMm, bed: { layers: [], hFloorWm2K: FLOOR }, roomC: room2, hTopWm2K: 9 },
      horizonS * 2,
      'quick'
    ).resin
    const { history } = slab
    const strings = crossingS(
      history.timeS,
      Array.from(history.meanViscosityPaS, v => Math.log(Math.min(v, 1e6))),
      Math.log(SYRUP_PAS)
    )
    return [
      next.peakC,
      Math.log(next.gelMin ?? big / 60),
      slab.peakC,
      Math.log((slab.firstGelS ?? big) / 60),
      Math.log(Math.max(300, strings ?? big) / 60)
    ]
  })
  const log = (min: number): number => Math.log(Math.max(5, Math.min(min, big / 60)))
  const truths = [
    trueCup.peakC,
    log(trueCup.firstGelMin),
    trueSlab.peakC,
    log(trueSlab.firstGelMin),
    log(trueSlab.stringsMin)
  ]
  const what = [
    'peak of a larger cup',
    'gel of a larger cup',
    'peak of a slab',
    'gel of a slab',
    'strings of a slab'
  ]
  return {
    kind,
    fitMs,
    about: `${j === 1 ? 'cylinder' : 'ball'}${from > 0 ? ' late' : ''}${partial > 0.8 ? ' early end' : ''}`,
    noiseK: fit.noise.sigmaK,
    asked: bands.map((b, i) => ({ what: what[i]!, true: truths[i]!, ...b }))
  }
}
