import { readyWords } from '../fits/drying-now.ts'
import { builtIn } from '../fits/season.ts'
import { decimals } from '../quantity/format.ts'
import { dryingByDiffusion, dryingByRule } from '../timber/drying.ts'
import { crossGrainMovement } from '../timber/movement.ts'
import type { Check, Found } from './finding.ts'
import { rounded, setQuantity } from './fix.ts'
import type { Work } from './work.ts'

/** From this width across the grain, mm, what is screwed to it wants slots (practice). */
const SLOTS_FROM_MM = 300
/** From this thickness, mm, the rule of a year an inch is said as well: thinner boards are bought kiln-dried. */
const THICK_MM = 40

/** Timber wetter than it will be where the piece lives: it goes on shrinking in the finished piece. */
export const timberWet: Check = {
  id: 'timber-wet',
  about: 'timber too wet for where the piece will live',
  cases: ['C58', 'C60', 'C63'],
  run: work => work.seasons.flatMap(s => one(work, s))
}

const KNOWN = {
  reading: 'measured',
  log: 'by its weights',
  document: 'given',
  storage: 'not measured: from the air it is stored in',
  room: 'not measured: from the air of the shop'
} as const

type Season = Work['seasons'][number]

function one(work: Work, season: Season): Found[] {
  const { corePct, dryPct, dampPct, source, log } = season
  const middle = (dryPct + dampPct) / 2
  const { wellPct: well, mostPct: most } = builtIn(dryPct, dampPct)
  if (corePct <= well + 1e-9) return []
  const { id, at, value } = work.entries.timbers[season.timber]!
  // Without a measurement nobody knows: that is for the maker to judge.
  const measured = source === 'reading' || source === 'log' || source === 'document'
  const stop = measured && corePct > most
  const goal = rounded(well, 'down', 0.1)
  const days = dryingByDiffusion({
    thicknessMm: Math.max(0.1, value.thickness),
    coreMoisturePct: corePct,
    roomMoisturePct: Math.min(30, middle)
  })
  const rule =
    value.thickness < THICK_MM
      ? ''
      : `; air drying by rule ${decimals(dryingByRule(value.thickness, 0).neededYears, 1)} years`
  return [
    {
      severity: stop ? 'stop' : 'caution',
      at,
      says: `${id} is at ${decimals(corePct, 1)} % (${known(season)}); where it will live timber stands at ${decimals(dryPct, 1)} to ${decimals(dampPct, 1)} %. ${shrinks(work, season, middle)}Not ready: ${log?.ready ? `by its weights ${readyWords(log.ready)}` : `${log === null ? '' : `${log.why}; `}its core takes ${decimals(days.lowDays, 0)} to ${decimals(days.highDays, 0)} days at least in that air${rule}`}.`,
      value: corePct,
      band: bandOf(season),
      unit: '%',
      limit: stop ? most : well,
      basis:
        'equilibrium moisture of the air it will live in (Wood Handbook eq. 4-5); 2 % over its middle: same, ch. 13 (memory); 1 % over the dampest, and 20 %: common practice; days: diffusion (Crank), the least',
      settledBy: 'a two-pin meter with its pins at the core, after flattening, or a sample dried in the oven',
      ...(source === 'reading' || source === 'log'
        ? {}
        : {
            fix: setQuantity(work.document, `${at}/moisture`, 'percent', goal, 'down', 0.1),
            fixSays: `Dry ${id} to ${decimals(goal, 1)} % at its core`
          })
    }
  ]
}

// The core lies as far from what is known of it as the mean does.
function bandOf({ corePct, moisturePct, bandPct }: Season): readonly [low: number, high: number] {
  return [Math.max(0, corePct + bandPct[0] - moisturePct), corePct + bandPct[1] - moisturePct]
}

// How it is known; what was measured says with what.
function known({ source, how, corePct, moisturePct }: Season): string {
  const core = Math.abs(corePct - moisturePct) < 0.05 ? '' : `, at its core; mean ${decimals(moisturePct, 1)}`
  return `${source === 'reading' ? how : KNOWN[source]}${core}`
}

function shrinks(work: Work, season: Season, toPct: number): string {
  const { acrossMm, coefficientPerPct, moisturePct } = season
  if (coefficientPerPct === null) return ''
  const { centralMm } = crossGrainMovement({
    dimensionMm: acrossMm,
    coefficientPerPct,
    fromPct: moisturePct,
    toPct,
    shrinkageStartPct: work.materials.timbers[season.timber]!.shrinkageStartPct ?? 30
  })
  const mm = Math.abs(centralMm)
  const slots =
    acrossMm < SLOTS_FROM_MM
      ? ''
      : `; round holes hold it until it splits, slots of ± ${decimals(mm / 2, 0)} mm do not`
  return `It would shrink ${decimals(mm, mm < 10 ? 1 : 0)} mm over its ${decimals(acrossMm, 0)} mm across the grain${slots}. `
}
