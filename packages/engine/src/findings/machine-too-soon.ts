import { MACHINE_DAYS, MACHINE_LEAST_DAYS } from '../cast/windows.ts'
import type { Face } from '../piece/piece-schema.ts'
import { formatMinutes } from '../quantity/format.ts'
import type { Step, StepKind } from '../steps/step.ts'
import { pourFace } from '../steps/step.ts'
import type { Check, Found } from './finding.ts'
import { intervalMin, lengthen, orderIsGiven } from './interval.ts'
import type { Work } from './work.ts'

const DAY = 24 * 60
/** A fill thinner than this, mm, is sanded after a day, hard after half a one (common practice). */
const THIN_MM = 3
const THIN_FULL_MIN = DAY
const THIN_LEAST_MIN = DAY / 2

const MACHINING: readonly StepKind[] = ['flatten', 'cut', 'mark', 'sand', 'trim', 'work edges', 'drill pins']

/** Resin that is cut or sanded before it is hard. */
export const machineTooSoon: Check = {
  id: 'machine-too-soon',
  about: 'resin that meets the cutter or the paper before it is hard',
  cases: ['C11', 'C13', 'O1'],
  run
}

/** Resin cast at a step; whether it fills a cut or a line and in which face, whether that is thin, or takes paper. */
interface Fresh {
  readonly index: number
  readonly words: string
  readonly filled: boolean
  readonly face: Face | null
  readonly thin: boolean
  readonly sandable: boolean
}

// Judges orders of the document; waits that the plan puts in or measures are the practice itself.
function run(work: Work): Found[] {
  if (!orderIsGiven(work)) return []
  const out: Found[] = []
  let fresh: Fresh[] = []
  work.steps.forEach((step, k) => {
    const made = freshOf(work, step, k)
    if (made !== null) fresh.push(made)
    if (step.kind === 'wait' && step.waitMin === undefined) fresh = waited(fresh, step)
    if (!MACHINING.includes(step.kind)) return
    // What paper does not harm a cutter over the whole face may.
    const spared = (f: Fresh) => f.sandable && !(step.kind === 'flatten' && step.face === f.face)
    const soft = fresh.filter(f => !spared(f))
    if (soft.length === 0) return
    // The one that lacks most; the first step after it stands for all that follow.
    const worst = soft
      .map(f => judge(work, f, step, k))
      .reduce((a, b) => (b.lackingMin > a.lackingMin ? b : a))
    fresh = fresh.filter(spared)
    if (worst.lackingMin > 0) out.push(worst.found())
  })
  return out
}

// A wait as long as its window: nothing is too soon for what it waits for.
function waited(fresh: readonly Fresh[], wait: Step): Fresh[] {
  if (wait.why === 'machine') return []
  return wait.why === 'sand' ? fresh.map(f => ({ ...f, sandable: f.filled })) : [...fresh]
}

function freshOf(work: Work, step: Step, index: number): Fresh | null {
  const common = { index, sandable: false }
  if (step.kind === 'fill')
    return { ...common, words: step.marking!.id, filled: true, face: step.marking!.value.face, thin: true }
  if (step.kind !== 'pour' || step.pour!.value.kind === 'seal') return null
  const { value, id, index: pour } = step.pour!
  const filled = value.kind === 'inlay'
  return {
    ...common,
    words: id,
    filled,
    face: filled ? pourFace(value, work.piece) : null,
    thin: filled && work.stack.pours[pour]!.depth < THIN_MM
  }
}

function judge(work: Work, fresh: Fresh, step: Step, to: number) {
  // A cutter over the whole face does not spare a thin fill.
  const thin = fresh.thin && step.kind !== 'flatten'
  const full = thin ? THIN_FULL_MIN : MACHINE_DAYS * DAY
  const least = thin ? THIN_LEAST_MIN : MACHINE_LEAST_DAYS * DAY
  const age = intervalMin(work, fresh.index, to)
  return {
    lackingMin: full - age,
    found: (): Found => ({
      severity: age < least ? 'stop' : 'caution',
      at: step.at,
      says: `${step.says}: ${fresh.words} is ${formatMinutes(age)} old by then, of ${formatMinutes(full)}. It is not ready to machine: what is still soft gums up cutter and paper, and the heat of the cut softens it further; ${formatMinutes(least)} is the least.`,
      value: age / DAY,
      unit: 'd',
      limit: (age < least ? least : full) / DAY,
      basis: thin
        ? 'thin fills hard after 12 h, sanded after a day: common practice, no source'
        : '7 days from pour to cutter, 3 at least: common practice, no source; the data sheet goes before',
      settledBy: 'a fingernail and a sharp scraper on the waste: no dent, dry dust',
      ...lengthen(work, fresh.index, to, full)
    })
  }
}
