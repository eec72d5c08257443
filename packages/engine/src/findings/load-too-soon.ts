import { MACHINE_DAYS, MACHINE_LEAST_DAYS } from '../cast/windows.ts'
import { formatMinutes } from '../quantity/format.ts'
import { shortName } from '../quantity/short-name.ts'
import { coreAt } from '../stack/core.ts'
import type { Step } from '../steps/step.ts'
import type { Check, Found } from './finding.ts'
import { intervalMin, lengthen, orderIsGiven } from './interval.ts'
import type { Work } from './work.ts'

const DAY = 24 * 60

/** Hardware fitted or the piece handed over before coat or resin bears it. */
export const loadTooSoon: Check = {
  id: 'load-too-soon',
  about: 'load on a coat or a press fit in resin that is not hard yet',
  cases: ['C11', 'O1'],
  run
}

/** What must have hardened before a step bears on it. Times in min. */
interface Due {
  readonly from: number
  readonly words: string
  readonly least: number
  readonly full: number
  readonly basis: string
}

// Judges orders of the document; in the usual order the plan waits for the coat itself.
function run(work: Work): Found[] {
  if (!orderIsGiven(work)) return []
  return work.steps.flatMap((step, k): Found[] => {
    if (step.kind !== 'fit' && step.kind !== 'deliver') return []
    const due = [...coatDue(work, k), ...pressDue(work, step, k)].map(d => ({
      ...d,
      age: intervalMin(work, d.from, k)
    }))
    const early = due.filter(d => d.age < d.full - 1e-6)
    if (early.length === 0) return []
    const worst = early.find(d => d.age < d.least) ?? early[0]!
    const last = early.reduce((a, b) => (b.full - b.age > a.full - a.age ? b : a))
    const stop = worst.age < worst.least
    return [
      {
        severity: stop ? 'stop' : 'caution',
        at: step.at,
        says: `${step.says}: ${worst.words} is ${formatMinutes(worst.age)} old by then. It bears load after ${formatMinutes(worst.full)}, ${formatMinutes(worst.least)} at the least: sooner it takes prints, creeps, or cracks round what is pressed in.`,
        value: worst.age / DAY,
        unit: 'd',
        limit: (stop ? worst.least : worst.full) / DAY,
        basis: worst.basis,
        ...lengthen(work, last.from, k, last.full)
      }
    ]
  })
}

// The last coat on each face before the step.
function coatDue(work: Work, step: number): Due[] {
  return (['front', 'back'] as const).flatMap((face): Due[] => {
    const coat = work.materials.coats[face]
    const from = work.steps.findLastIndex(
      (s, k) => k < step && s.kind === 'coat' && (s.face === 'both' || s.face === face)
    )
    if (coat === null || from < 0) return []
    const [least, full] = coat.loadAfterDays
    return [
      {
        from,
        words: `the ${shortName(coat.name)} on the ${face}`,
        least: least * DAY,
        full: full * DAY,
        basis: `days until a coat of this kind bears load: ${coat.source}; the tin's own sheet goes before`
      }
    ]
  })
}

// The youngest resin round a part that is pressed in.
function pressDue(work: Work, step: Step, k: number): Due[] {
  if (step.kind !== 'fit' || step.hardware!.value.fitting !== 'press') return []
  const pours = resinRound(work, step.hardware!.index)
  const from = work.steps.findLastIndex((s, j) => j < k && s.kind === 'pour' && pours.has(s.pour!.index))
  if (from < 0) return []
  return [
    {
      from,
      words: `${work.steps[from]!.pour!.id}, into which it is pressed,`,
      least: MACHINE_LEAST_DAYS * DAY,
      full: MACHINE_DAYS * DAY,
      basis: 'full cure before a press fit in resin, 7 days, 3 at least: common practice, no source'
    }
  ]
}

/** Points round a part at which the stack is looked at, and how far off its edge, mm. */
const ROUND = 8
const BESIDE_MM = 1

function resinRound(work: Work, hardware: number): Set<number> {
  const { part, x, y } = work.fits[hardware]!
  const radius = (part === null ? 5 : Math.max(part.widthMm, part.lengthMm) / 2) + BESIDE_MM
  const out = new Set<number>()
  for (let n = 0; n < ROUND; n++) {
    const angle = (n * 2 * Math.PI) / ROUND
    const core = coreAt(
      work.stack.geometry,
      work.stack.events,
      x + radius * Math.cos(angle),
      y + radius * Math.sin(angle)
    )
    for (const { material } of core) if (material.kind === 'pour') out.add(material.index)
  }
  return out
}
