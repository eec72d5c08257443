import type { ResinRecord } from '../catalogue/resin.ts'
import type { ShopCupTest } from '../piece/shop-schema.ts'
import { kept } from '../quantity/kept.ts'
import { toFixedUnit } from '../quantity/unit.ts'
import { type CupDoubt, cupDoubts } from '../resin/fit/cup-doubt.ts'
import { type CupFit, fitCup } from '../resin/fit/cup-fit.ts'
import { type CupReport, cupReport } from '../resin/fit/cup-report.ts'
import type { CupTest } from '../resin/fit/cup-test.ts'
import { cupWords } from '../resin/fit/cup-words.ts'

/** A cup test read against its class: fit, report and plain sentences; data throughout. */
export interface CupResult {
  readonly test: CupTest
  readonly fit: CupFit
  readonly report: CupReport
  /** Why it is not to be believed as it stands; empty where nothing is odd. */
  readonly doubts: readonly CupDoubt[]
  /** What was learned, in sentences. */
  readonly says: readonly string[]
}

const cups = new Map<string, CupResult>()

/** A shop's cup test against the class of its resin. @throws RangeError for a family that is not predicted */
export function cupResult(test: ShopCupTest, record: ResinRecord): CupResult {
  const { model } = record
  if (model === null) throw new RangeError(`${record.name}: cure and heat are not predicted for this family`)
  return kept(cups, JSON.stringify([record.id, test]), () => {
    const plain = cupTestOf(test)
    const fit = fitCup(plain, model)
    const report = cupReport(fit, record)
    const doubts = cupDoubts(plain, fit, test.unit)
    const odd = doubts.map(d => `Not to be believed as it stands: ${d.found}. Asked for: ${d.allowed}.`)
    return { test: plain, fit, report, doubts, says: [...odd, ...cupWords(plain, fit, report)] }
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
