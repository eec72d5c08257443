import type { ResinRecord } from '../catalogue/resin.ts'
import { RESINS } from '../catalogue/resin.ts'
import { InputProblem } from '../piece/problem.ts'
import type { ResinChoice } from '../piece/resin-choice.ts'
import { chooseResin } from '../piece/resin-choice.ts'
import type { Shop, ShopCupTest, ShopResin } from '../piece/shop-schema.ts'
import { toFixedUnit } from '../quantity/unit.ts'
import { type CupFit, fitCup } from '../resin/fit/cup-fit.ts'
import { type CupReport, cupReport } from '../resin/fit/cup-report.ts'
import type { CupTest } from '../resin/fit/cup-test.ts'
import { cupWords } from '../resin/fit/cup-words.ts'
import type { LabelFigures } from '../resin/label.ts'
import { type LabelFit, labelFit } from '../resin/label-fit.ts'

/** A cup test read against its class: fit, report and plain sentences; data throughout. */
export interface CupResult {
  readonly test: CupTest
  readonly fit: CupFit
  readonly report: CupReport
  /** What was learned, in sentences. */
  readonly says: readonly string[]
}

/**
 * What a resin of the maker's own is taken to be: the class's record with what its last cup test, else its
 * label, say over it, model and band both. The one place that decides the model a pour uses.
 *
 * A cup test that tells nothing of the speed leaves label or class standing. The fit is made anew from the raw
 * readings each time (the last few are kept by what they were made from), so no figure can grow stale.
 */
export function ownResin(choice: ResinChoice): ResinChoice {
  const { label, record } = choice
  if (label === null || record.model === null) return choice
  const test = label.cupTests[label.cupTests.length - 1]
  if (test !== undefined) {
    const { fit, report } = cupResult(test, record)
    if (report.speedLearned)
      return { ...choice, known: 'cup', record: { ...record, model: fit.model, band: report.band } }
  }
  const fit = fitOfLabel(choice)
  if (fit === null) return choice
  return {
    ...choice,
    known: 'label',
    record: { ...record, model: fit.model, band: labelBand(record.band, fit) }
  }
}

/**
 * The band of times of a label: never wider than the class's where its figures are met; where they contradict
 * each other or the class, never narrower, and as wide as covers what each of them says.
 */
export function labelBand(band: ResinRecord['band'], fit: LabelFit): ResinRecord['band'] {
  if (fit.spread === null) return { ...band, time: Math.min(band.time, fit.time ?? band.time) }
  const time = Math.max(band.time, fit.spread)
  return { ...band, time, peakK: (band.peakK * time) / band.time }
}

/**
 * Fits a cup test to the class of a resin of the shop, or of the catalogue: for the command and for a form.
 * `test` is as a shop holds it ({@link ShopCupTest}, see checkCupTest); the answer is plain data, and says what
 * was learned in sentences. About a quarter of a second; the last few are kept.
 * @throws InputProblem for a resin that is not known or not predicted
 */
export function fitCupTest(test: ShopCupTest, resin: string, shop: Shop, source = 'shop'): CupResult {
  const choice = chooseResin(resin, shop, '/resin')
  if ('found' in choice) throw new InputProblem(source, [choice])
  if (choice.record.model === null)
    throw new InputProblem(source, [
      {
        path: '/resin',
        found: `"${resin}", ${choice.record.name}`,
        allowed: 'an epoxy: cure and heat of other families are not predicted',
        example: '"medium"'
      }
    ])
  return cupResult(test, choice.record)
}

/** A shop's cup test against the class of its resin. @throws RangeError for a family that is not predicted */
function cupResult(test: ShopCupTest, record: ResinRecord): CupResult {
  const { model } = record
  if (model === null) throw new RangeError(`${record.name}: cure and heat are not predicted for this family`)
  return kept(cups, JSON.stringify([record.id, test]), () => {
    const plain = cupTestOf(test)
    const fit = fitCup(plain, model)
    const report = cupReport(fit, record)
    return { test: plain, fit, report, says: cupWords(plain, fit, report) }
  })
}

/** A cup test of the shop in the units of the models. */
function cupTestOf(test: ShopCupTest): CupTest {
  return {
    massG: test.mass,
    diameterMm: test.diameter,
    roomC: test.room,
    startC: test.start ?? null,
    readings: test.readings.map(([timeMin, typed]) => ({ timeMin, tempC: toFixedUnit(typed, test.unit) })),
    stringsMin: test.strings ?? null,
    gelledMin: test.gelled ?? null
  }
}

/** A resin by its label's figures, against its class; null where it has none that the models use. */
export function fitOfLabel(choice: ResinChoice): LabelFit | null {
  const { label } = choice
  const record = RESINS.find(r => r.id === choice.record.id)!
  if (label === null || record.model === null) return null
  const figures = figuresOf(label, choice)
  if (Object.keys(figures).length === 0) return null
  const { model } = record
  return kept(labels, JSON.stringify([record.id, figures]), () => labelFit(model, figures))
}

function figuresOf(label: ShopResin, choice: ResinChoice): LabelFigures {
  const { potLife, gelTime, hardTime, greatestDepth, viscosity, densityA, densityB, ratio } = label
  const { mix } = choice
  const density =
    densityA !== undefined && densityB !== undefined && ratio !== undefined
      ? (1000 * (mix.massA + mix.massB)) / (mix.massA / densityA + mix.massB / densityB)
      : undefined
  const film = (t: { minutes: number; temperature: number }) => ({ minutes: t.minutes, tempC: t.temperature })
  return {
    ...(potLife && {
      potLife: { minutes: potLife.minutes, massG: potLife.mass, tempC: potLife.temperature }
    }),
    ...(gelTime && { gelTime: film(gelTime) }),
    ...(hardTime && { hardTime: film(hardTime) }),
    ...(greatestDepth !== undefined && { greatestDepthMm: greatestDepth }),
    ...(viscosity !== undefined && { viscosityPaS: viscosity / 1000 }),
    ...(density !== undefined && { densityKgM3: density })
  }
}

// The last few fits, by what they were made from: a plan is made anew with every edit of a piece, and the resins
// of its shop stay as they are. The same input gives the same answer with or without.
const cups = new Map<string, CupResult>()
const labels = new Map<string, LabelFit>()
const MOST_KEPT = 16

function kept<T>(made: Map<string, T>, key: string, make: () => T): T {
  const known = made.get(key)
  if (known !== undefined) return known
  const fresh = make()
  if (made.size >= MOST_KEPT) made.delete(made.keys().next().value!)
  made.set(key, fresh)
  return fresh
}
