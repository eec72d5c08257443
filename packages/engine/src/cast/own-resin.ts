import type { ResinRecord } from '../catalogue/resin.ts'
import { RESINS } from '../catalogue/resin.ts'
import { InputProblem } from '../piece/problem.ts'
import type { ResinChoice } from '../piece/resin-choice.ts'
import { chooseResin } from '../piece/resin-choice.ts'
import type { Shop, ShopCupTest, ShopResin } from '../piece/shop-schema.ts'
import { decimals } from '../quantity/format.ts'
import { kept } from '../quantity/kept.ts'
import type { CupDoubt } from '../resin/fit/cup-doubt.ts'
import type { LabelFigures } from '../resin/label.ts'
import { type LabelFit, labelFit } from '../resin/label-fit.ts'
import { type CupResult, cupResult } from './cup-result.ts'

const labels = new Map<string, LabelFit>()

/**
 * What a resin of the maker's own is taken to be: the class's record with what its cup tests, else its
 * label, say over it, model and band both. The one place that decides the model a pour uses.
 *
 * Of several cup tests the one counts that leaves the narrowest band: one that ended early leaves an earlier, fuller
 * one standing. A cup test that tells nothing of the speed leaves label or class standing, and no band is wider than
 * the class's. The fit is made anew from the raw
 * readings each time (the last few are kept by what they were made from), so no figure can grow stale.
 */
export function ownResin(choice: ResinChoice): ResinChoice {
  const { label, record } = choice
  if (label === null || record.model === null) return choice
  const best = bestTest(label, record)
  const fit = fitOfLabel(choice)
  if (best !== null) {
    const { report, fit: cup } = best.result
    // A cup that leaves times as open as the class does says less than a label whose figures go together.
    const labelKnows = fit !== null && fit.spread === null && fit.time !== null && fit.time < report.alone
    if (!(labelKnows && report.alone > record.band.time)) {
      const agrees = fit !== null && fit.factor >= report.faster.low && fit.factor <= report.faster.high
      const time = labelKnows && agrees ? Math.min(report.band.time, fit.time!) : report.band.time
      return {
        ...choice,
        known: 'cup',
        record: { ...record, model: cup.model, band: { ...report.band, time } }
      }
    }
  }
  if (fit === null) return choice
  return {
    ...choice,
    known: 'label',
    record: { ...record, model: fit.model, band: labelBand(record.band, fit) }
  }
}

/** The cup test that says most of a resin, among the last few; null where none does. */
function bestTest(
  label: ShopResin,
  record: ResinRecord
): { readonly index: number; readonly result: CupResult } | null {
  let best: { index: number; result: CupResult } | null = null
  const { cupTests } = label
  for (let index = cupTests.length - 1; index >= Math.max(0, cupTests.length - MOST_TESTS); index--) {
    const result = cupResult(cupTests[index]!, record)
    if (!result.report.speedLearned || result.doubts.some(d => UNSOUND.has(d.kind))) continue
    // The later of two that say as much.
    if (best === null || result.report.alone < 0.95 * best.result.report.alone) best = { index, result }
  }
  return best
}

/** Tests of a resin that are looked at, from the last on: a fit takes a quarter of a second. */
const MOST_TESTS = 6
/** Doubts that leave a test out, even where it stands in the shop. */
const UNSOUND: ReadonlySet<CupDoubt['kind']> = new Set(['cold', 'mark', 'stray'])

/** Which of a resin's tests later plans go by, in words; empty for a single one that counts. */
function countsWords(choice: ResinChoice): readonly string[] {
  const { label, record } = choice
  if (label === null || label.cupTests.length === 0) return []
  const own = ownResin(choice)
  const time = decimals(100 * own.record.band.time, 0)
  const { cupTests } = label
  if (own.known !== 'cup')
    return [`Later plans go by ${own.known === 'label' ? 'the label' : 'the class'}, times within ${time} %.`]
  if (cupTests.length === 1) return []
  const { index } = bestTest(label, record)!
  const { day } = cupTests[index]!
  return [
    `${cupTests.length} tests of it are kept: later plans go by number ${index + 1}${day === undefined ? '' : ` of ${day}`}, which leaves the narrowest band, times within ${time} %.`
  ]
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
  const result = cupResult(test, choice.record)
  return { ...result, says: [...result.says, ...countsWords(choice)] }
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
