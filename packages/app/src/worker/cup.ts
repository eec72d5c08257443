import type { CupResult } from '../../../engine/src/cast/cup-result.ts'
import { fitCupTest, fitOfLabel } from '../../../engine/src/cast/own-resin.ts'
import { readCupTest } from '../../../engine/src/piece/cup-readings.ts'
import { applyPatch } from '../../../engine/src/piece/patch.ts'
import { InputProblem } from '../../../engine/src/piece/problem.ts'
import { checkCupTest, checkShop } from '../../../engine/src/piece/read.ts'
import { chooseResin } from '../../../engine/src/piece/resin-choice.ts'
import type { Shop } from '../../../engine/src/piece/shop-schema.ts'
import { decimals } from '../../../engine/src/quantity/format.ts'
import { roughTime } from '../../../engine/src/quantity/rough.ts'
import type { ShownUnits } from '../../../engine/src/quantity/shown-units.ts'
import { degreesIn } from '../../../engine/src/quantity/shown-units.ts'
import { labelWords } from '../../../engine/src/resin/label-fit.ts'
import { cupSheet, cupSheetWords } from '../../../engine/src/sheets/cup-sheet.ts'
import { keepPatch } from '../shop/cup-patch.ts'
import type { Json } from './document.ts'
import type { CupAsk } from './messages.ts'
import { drawnOf } from './planned-view.ts'
import type { CupAnswer } from './views.ts'

/** Named in messages about readings that were pasted or typed. */
const READINGS = 'the readings'
/** Rows of the readings beside their fit that are written out. */
const ROWS = 24
/** Parameters that tell of the cup and the thermometer, not of the resin. */
const OF_THE_CUP = ['film', 'inside', 'lag', 'clock', 'start', 'room']

/**
 * Reads a cup test and fits the resin to it; nothing is kept. What would be kept must read back as part of the shop.
 * @throws InputProblem for readings, figures or a shop that cannot be used
 */
export function cupAnswer(ask: CupAsk): CupAnswer {
  const shop = ask.shop ?? { castwright: 1 }
  const { document, notes } = ask.kept === null ? typedTest(ask) : { document: ask.kept, notes: [] }
  const { value } = checkCupTest(document, READINGS)
  const after = ask.kept === null ? applyPatch(shop, keepPatch(shop, ask.resin, document)) : shop
  const checked = checkShop(after, 'the shop').value
  const result = fitCupTest(value, ask.resin.id, checked, 'the shop')
  // A unit that was chosen answers the doubt about it.
  const doubts = result.doubts.filter(
    d => !(d.kind === 'unit' && ask.kept === null && ask.given.unit !== undefined)
  )
  return {
    document,
    notes,
    believed: ask.kept !== null || doubts.length === 0,
    says: result.says,
    label: labelSays(result, ask.resin.id, checked),
    drawn: drawnOf(cupSheet(result, { widthMm: ask.widthMm, shown: ask.shown })),
    words: cupSheetWords(result, ask.shown),
    rows: rowsOf(result, ask.shown),
    learned: result.report.parameters
      .filter(p => !OF_THE_CUP.includes(p.name))
      .map(
        p => [p.about, three(p.value), `${three(p.low)} to ${three(p.high)}`, three(p.classValue)] as const
      )
  }
}

function typedTest({ text, given }: CupAsk): { document: Json; notes: readonly string[] } {
  const { unit, mixed } = given
  const read = readCupTest(text, {
    source: READINGS,
    ...(unit === undefined ? {} : { unit }),
    ...(mixed === undefined ? {} : { mixed })
  })
  const { told } = read
  const rounded = (x: number | null): number | undefined => (x === null ? undefined : Number(decimals(x, 2)))
  const entry: Json = {
    day: given.day,
    mass: given.mass ?? rounded(told.massG),
    diameter: given.diameter ?? rounded(told.diameterMm),
    room: given.room ?? rounded(told.roomC ?? read.roomC),
    start: given.start ?? rounded(told.startC),
    unit: read.unit,
    readings: read.readings,
    strings: given.strings ?? rounded(read.stringsMin),
    gelled: given.gelled ?? rounded(read.gelledMin)
  }
  for (const [key, words] of MUST)
    if (entry[key] === undefined)
      throw new InputProblem(READINGS, [
        { path: '', found: `no ${words[0]}`, allowed: words[1], example: words[2] }
      ])
  const document = Object.fromEntries(Object.entries(entry).filter(([, v]) => v !== undefined))
  return { document, notes: read.says.map(s => s.replace('say --mixed when', 'give the time of mixing if')) }
}

const MUST = [
  ['mass', ['mass', 'what was mixed, A and B together, here or in a line of the readings', '# mass: 200 g']],
  ['diameter', ['cup', 'its inner diameter, here or in a line of the readings', '# cup: 80 mm']],
  ['room', ['room', 'the air about the cup, here or in a line of the readings', '# room: 21 °C']]
] as const

// What the label says of the speed, beside what the cup found.
function labelSays({ report }: CupResult, id: string, shop: Shop): readonly string[] {
  const choice = chooseResin(id, shop, '/resin')
  const fit = 'found' in choice ? null : fitOfLabel(choice)
  if (fit === null) return []
  const cup = decimals(report.faster.central, 2)
  const figures = fit.figures.flatMap(f => {
    if (typeof f.factor !== 'number' || !report.speedLearned) return []
    const { low, high } = report.faster
    const agrees = f.factor >= low && f.factor <= high
    return [
      `By ${f.called} of the label it is ${decimals(f.factor, 2)} times as fast as its class; the cup says ${cup}${agrees ? ', which holds it' : `, between ${decimals(low, 2)} and ${decimals(high, 2)}`}.`
    ]
  })
  return [...labelWords(fit), ...figures]
}

function rowsOf({ fit }: CupResult, shown: ShownUnits): CupAnswer['rows'] {
  const step = Math.max(1, Math.ceil(fit.residuals.length / ROWS))
  return fit.residuals
    .filter((_, i) => i % step === 0 || i === fit.residuals.length - 1)
    .map(r => {
      const off = shown.temperature === '°F' ? r.offK * 1.8 : r.offK
      return [
        roughTime(r.timeMin),
        degreesIn(shown, r.measuredC),
        degreesIn(shown, r.fittedC),
        `${off <= -0.05 ? '−' : off < 0.05 ? '' : '+'}${decimals(Math.abs(off), 1, 1)}`
      ] as const
    })
}

function three(x: number): string {
  return Number(x.toPrecision(3)).toString()
}
