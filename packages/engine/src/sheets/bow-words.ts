import type { Work } from '../findings/work.ts'
import type { BowRow } from '../fits/bow.ts'
import type { FaceBow } from '../fits/bow-face.ts'
import { lengthsOf } from '../piece/lengths.ts'
import type { ShownUnits } from '../quantity/shown-units.ts'
import { lengthIn } from '../quantity/shown-units.ts'
import type { RunFact } from './run-part.ts'
import { fact } from './run-part.ts'

/** A bow whose upper end is less than this is none to a maker, mm: a sheet of paper under a straightedge. */
const LEAST_MM = 0.1
/** A likeliest bow that would be written as nothing has no figure and no direction, mm. */
const SAID_MM = 0.05

/** The face that a straightedge finds worse, with its bow; null where neither shows any. */
function worse(row: BowRow | undefined): (FaceBow & { readonly face: 'front' | 'back' }) | null {
  if (row === undefined) return null
  const face = row.front.mm / row.front.limitMm >= row.back.mm / row.back.limitMm ? 'front' : 'back'
  return row[face].bandMm[1] < LEAST_MM ? null : { ...row[face], face }
}

function rowAt(work: Work, step: number, when?: BowRow['when']): BowRow | undefined {
  return work.bow?.rows.find(r => r.step === step && (when === undefined || r.when === when))
}

/** Few words for a step that changes the shape: "bows about 0.4 mm, band 0.1 to 0.6, hollow on the front". */
export function bowPhrase(work: Work, step: number, shown: ShownUnits): string | null {
  const bow = worse(rowAt(work, step))
  if (bow === null || rowAt(work, step)!.when === 'cured') return null
  const length = (mm: number) => lengthIn(shown, mm, 1, 1)
  if (bow.mm < SAID_MM) return `bows less than ${length(bow.bandMm[1])}`
  return `bows about ${length(bow.mm)}, band ${length(bow.bandMm[0])} to ${length(bow.bandMm[1])}, ${sense(bow)}`
}

/** The same as a figure with its name, for the run sheet. */
export function bowFacts(work: Work, step: number, label: string, when?: BowRow['when']): RunFact[] {
  const L = lengthsOf(work.shop)
  const bow = worse(rowAt(work, step, when))
  if (bow === null) return []
  const [low, high] = bow.bandMm
  const over = `${L.unit} over ${L.of(bow.overMm, 0)}`
  if (bow.mm < SAID_MM) return [fact(label, `less than ${L.of(high, 1, 1)}`, over)]
  return [
    fact(label, L.of(bow.mm, 1, 1), `${over}; ${L.of(low, 1, 1)} to ${L.of(high, 1, 1)}, ${sense(bow)}`)
  ]
}

function sense(bow: FaceBow & { readonly face: string }): string {
  return bow.hollow ? `hollow on the ${bow.face}` : `the ${bow.face} stands up in its middle`
}

/** A bow that another order saves is worth a line from this on, mm. */
const SAVES_MM = 0.2

/** Another order or depth of flattening, at the first face that is flattened, where it leaves much less. */
export function orderLines(work: Work, step: number): string[] {
  const L = lengthsOf(work.shop)
  const { bow } = work
  const first = bow?.rows.find(r => r.flattens !== null)
  const [planned, ...others] = bow?.order ?? []
  if (bow === null || planned === undefined || first?.step !== step) return []
  const best = others.reduce((a, b) => (b.leavesMm < a.leavesMm ? b : a), planned)
  if (planned.leavesMm - best.leavesMm < SAVES_MM || best.leavesMm > planned.leavesMm / 2) return []
  return [
    `As planned the ${planned.face} is left bent by about ${L.of(planned.leavesMm, 1)} ${L.unit}; ${best.says}: ${L.of(best.leavesMm, 1, 1)} ${L.unit}.`
  ]
}
