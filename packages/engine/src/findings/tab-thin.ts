import type { Entry } from '../piece/entry.ts'
import type { Cut } from '../piece/piece-schema.ts'
import { decimals } from '../quantity/format.ts'
import type { Check, Found } from './finding.ts'
import { rounded, setQuantity, setValue, typedAt } from './fix.ts'
import type { Work } from './work.ts'

/** Tabs, or a skin, that hold a part while it is cut out: too thin, as drawn or because the piece is. */
export const tabThin: Check = {
  id: 'tab-thin',
  about: 'tabs or a skin too thin to hold, measured against the thickness there really is',
  cases: ['C70'],
  run
}

/** Thinnest tab that holds, and thinnest skin, mm (common practice; the tab: makers’ case C70). */
const TAB_MM = 1.5
const SKIN_MM = 0.3
/** Tabs that are asked for by a plain yes, or by nothing, mm. */
const USUAL_TAB_MM = 3
const ROUNDING_MM = 1e-6

function run(work: Work): Found[] {
  if (work.shop.machine === undefined) return []
  return work.entries.cuts.flatMap((cut): Found[] => {
    const { tabs, skin, way, kind, through } = cut.value
    if (way !== 'machine') return []
    // An outline right through that says nothing of tabs is given the usual ones.
    const held = tabs ?? (kind === 'outline' && through === true)
    if (skin === undefined && held === false) return []
    const drawn = skin ?? (typeof tabs === 'object' ? tabs.thick : USUAL_TAB_MM)
    const least = skin === undefined ? TAB_MM : SKIN_MM
    const { lackingMm, says } = thinner(work, cut)
    const real = drawn - lackingMm
    if (real >= least - ROUNDING_MM) return []
    const what = skin === undefined ? 'tabs' : 'skin'
    const left = real > 0.05 ? `leaves ${what} of ${decimals(real, 2)} mm` : `cuts the ${what} through`
    return [
      {
        severity: 'stop',
        at: typedAt(work.document, `${cut.at}/${what}`) === undefined ? cut.at : `${cut.at}/${what}`,
        says: `${cut.id} ${left}: ${decimals(drawn, 2)} mm as drawn${says}. Under ${decimals(least, 1)} mm they tear, and the part comes loose beside the running cutter.`,
        value: real,
        unit: 'mm',
        limit: least,
        basis: `${skin === undefined ? 'tabs of 1.5 mm' : 'a skin of 0.3 mm'} at least: common practice, no source${lackingMm > 0 ? '; the thickness: measured' : ''}`,
        ...thicker(work, cut, drawn + least - real)
      }
    ]
  })
}

// How much less there is than the plan takes for the cut. A reading from before the last flattening shows more, and
// then says nothing.
function thinner(work: Work, { index }: Entry<Cut>): { readonly lackingMm: number; readonly says: string } {
  const step = work.stack.cuts[index]!.step
  const state = step === null ? undefined : work.stack.states[step.number - 2]
  let measured: number | null = null
  let latest = ''
  for (const r of work.readings)
    if (
      r.kind === 'thickness' &&
      Date.parse(r.at) >= (latest === '' ? Number.NEGATIVE_INFINITY : Date.parse(latest))
    ) {
      measured = r.thickness
      latest = r.at
    }
  if (state === undefined || measured === null) return { lackingMm: 0, says: '' }
  const planned = state.highZ - state.lowZ
  const lackingMm = Math.max(0, planned - measured)
  return lackingMm < ROUNDING_MM
    ? { lackingMm: 0, says: '' }
    : {
        lackingMm,
        says: `, but the piece was measured ${decimals(measured, 2)} mm thick where the plan has ${decimals(planned, 2)}`
      }
}

function thicker(work: Work, { at, id, value }: Entry<Cut>, wanted: number): Pick<Found, 'fix' | 'fixSays'> {
  const mm = rounded(wanted, 'up', 0.1)
  if (value.skin !== undefined)
    return {
      fix: setQuantity(work.document, `${at}/skin`, 'length', wanted, 'up'),
      fixSays: `${id} with a skin of ${decimals(mm, 1)} mm`
    }
  return {
    fix:
      typeof value.tabs === 'object'
        ? setQuantity(work.document, `${at}/tabs/thick`, 'length', wanted, 'up')
        : setValue(work.document, `${at}/tabs`, { thick: mm }),
    fixSays: `${id} with tabs ${decimals(mm, 1)} mm thick`
  }
}
