import type { PourCast } from '../../../engine/src/cast/cast.ts'
import type { Window } from '../../../engine/src/cast/window.ts'
import type { Windows } from '../../../engine/src/cast/windows.ts'
import { applyPatch } from '../../../engine/src/piece/patch.ts'
import { aboutTime } from '../../../engine/src/quantity/rough.ts'
import type { ShownUnits } from '../../../engine/src/quantity/shown-units.ts'
import { castCurve } from '../../../engine/src/sheets/page-card.ts'
import type { WindowsAsked } from '../../../engine/src/sheets/window-rows.ts'
import { windowRows } from '../../../engine/src/sheets/window-rows.ts'
import { depthPatch } from '../card/depth-patch.ts'
import type { Json } from './document.ts'
import { peakView } from './layer-view.ts'
import type { WhatIfAsk } from './messages.ts'
import type { WhatIfView } from './views.ts'

/** Air of the room that a shop which says nothing has, °C (shop-schema.ts). */
interface Climate {
  readonly night: number
  readonly day: number
}

/** The piece and the shop with what is tried: a pour so deep as cast, a room so much warmer. */
export function triedDocuments(
  ask: Pick<WhatIfAsk, 'document' | 'shop' | 'pour' | 'depthMm' | 'roomK'>,
  climate: Climate
): { document: Json; shop: Json } {
  const { document, pour, depthMm, roomK } = ask
  const shop = ask.shop ?? { castwright: 1 }
  const own = (shop['climate'] as Json | undefined) ?? {}
  return {
    document: depthMm === null ? document : applyPatch(document, depthPatch(document, pour, depthMm)),
    shop:
      roomK === 0
        ? shop
        : { ...shop, climate: { ...own, night: climate.night + roomK, day: climate.day + roomK } }
  }
}

/**
 * How a pour that was cast with its whole mould would do, from how the column alone moves: its rise over the mix in
 * proportion to the column's, its times in proportion to the column's. An estimate, until the whole mould is cast.
 */
export function carried(own: PourCast, before: PourCast, after: PourCast): PourCast {
  const rise = before.peakC - before.startC
  const grown = rise > 0.5 ? Math.max(0, after.peakC - after.startC) / rise : 1
  const pace = before.peakMin > 0 ? after.peakMin / before.peakMin : 1
  const warm = (c: number) => after.startC + (c - own.startC) * grown
  const later = (min: number) => min * pace
  const { curve } = own
  const peakC = warm(own.peakC)
  return {
    ...own,
    startC: after.startC,
    peakC,
    peakBandC: [Math.min(peakC, warm(own.peakBandC[0])), Math.max(peakC, warm(own.peakBandC[1]))],
    peakMin: later(own.peakMin),
    peakMinBand: [later(own.peakMinBand[0]), later(own.peakMinBand[1])],
    runaway: after.runaway,
    windows: carriedWindows(own.windows, before.windows, after.windows),
    curve: {
      ...curve,
      min: curve.min.map(later),
      hottestC: curve.hottestC.map(warm),
      lowC: curve.lowC.map(warm),
      highC: curve.highC.map(warm)
    }
  }
}

const NAMES = [
  'working',
  'marbling',
  'passes',
  'stones',
  'tacky',
  'recoat',
  'demould',
  'sand',
  'machine',
  'service'
] as const

function carriedWindows(own: Windows, before: Windows, after: Windows): Windows {
  const each = NAMES.map(name => [name, carriedWindow(own[name], before[name], after[name])] as const)
  return { ...own, ...(Object.fromEntries(each) as Pick<Windows, (typeof NAMES)[number]>) }
}

function carriedWindow<W extends Window>(own: W | null, before: W | null, after: W | null): W | null {
  if (own === null || before === null || after === null) return after
  const by = (a: number | null, b: number | null) => (a !== null && b !== null && a > 0 ? b / a : 1)
  const [opens, closes] = [by(before.open, after.open), by(before.close, after.close)]
  const times = (x: number | null, factor: number) => (x === null ? null : x * factor)
  return {
    ...own,
    reached: after.reached,
    open: own.open * opens,
    close: times(own.close, closes),
    openBand: [own.openBand[0] * opens, times(own.openBand[1], opens)],
    closeBand: [times(own.closeBand[0], closes), times(own.closeBand[1], closes)],
    band: [own.band[0] * opens, times(own.band[1], closes)]
  }
}

/** What is shown of a try: the peak, what moved, the curve over the one before. */
export function whatIfView(
  id: string,
  was: PourCast,
  now: PourCast,
  asked: WindowsAsked,
  shown: ShownUnits,
  by: WhatIfView['by']
): WhatIfView {
  const before = new Map(windowRows(was, asked).map(r => [r.label, r.says]))
  const rows = windowRows(now, asked)
  return {
    by,
    peak: peakView(now),
    peakAfter: aboutTime(now.peakMin),
    moved: rows.flatMap(({ label, says, band }) =>
      before.get(label) === says ? [] : [{ label, was: before.get(label) ?? '–', says, band }]
    ),
    curve: castCurve(now, id, rows, shown, was).text
  }
}
