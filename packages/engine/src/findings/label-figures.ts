import { fitOfLabel, labelBand } from '../cast/own-resin.ts'
import { RESINS } from '../catalogue/resin.ts'
import { decimals } from '../quantity/format.ts'
import { RATE_FIGURES } from '../resin/label.ts'
import { labelWords, NINETY, WIDEST } from '../resin/label-fit.ts'
import type { Check, Found } from './finding.ts'
import type { Work } from './work.ts'

/** Figures of a resin's label that go against each other, or that no resin of its class can meet. */
export const labelFigures: Check = {
  id: 'label-figures',
  about: 'figures on the label of a resin that contradict each other or its class',
  cases: [],
  run: work => work.entries.pours.flatMap(({ index }) => one(work, index))
}

// Once a resin: at the first pour of it. A cup test goes before any label.
function one(work: Work, i: number): Found[] {
  const { resins } = work.materials
  const choice = resins[i]!
  if (choice.known === 'cup' || resins.findIndex(r => r.id === choice.id) < i) return []
  const fit = fitOfLabel(choice)
  if (fit === null) return []
  const words = labelWords(fit)
  const { conflict } = fit
  const { label } = choice
  const called = label?.name ?? choice.id
  const { band } = RESINS.find(r => r.id === choice.record.id)!
  const unsaid = label?.like === undefined ? ' It says no class (like): medium is taken.' : ''
  const time = decimals(100 * labelBand(band, fit).time, 0)
  const basis = 'each figure turned into a speed by the models of its class'
  if (words.length === 0)
    return unsaid === ''
      ? []
      : [
          {
            severity: 'note',
            at: work.entries.pours[i]!.at,
            says: `The label of ${called} is read against a class.${unsaid} Say deep or thin if it is one.`,
            value: null,
            unit: null,
            limit: null,
            basis,
            settledBy: `a cup test of ${called}: a batch left in its cup with a thermometer`
          }
        ]
  // Beyond the widest band that is ever taken: said, not hidden.
  const beyond =
    fit.spread !== null && fit.spread >= WIDEST
      ? ', the most that is ever taken: the figures may lie further apart'
      : ''
  // A resin that is faster than any of its class runs away where the plan says it keeps cool.
  const fast = fit.figures.some(f => f.factor === 'faster')
  const harm = fast
    ? ' So fast a resin would run hotter than is told here: name its class (like) or test a cup of it.'
    : ''
  return [
    {
      severity: fast ? 'stop' : 'caution',
      at: work.entries.pours[i]!.at,
      says: `The label of ${called} does not go together. ${words.join(' ')}${unsaid}${harm} Times are taken within ${time} % either way${beyond}.`,
      value: conflict?.times ?? null,
      unit: conflict === null ? null : 'times',
      limit: conflict === null ? null : allowed(conflict.fast.figure, conflict.slow.figure),
      basis: `${basis}; pot life and gel time are kept by labels within 20 %, a depth within 30 % of the speed, a hard time within 40 % (common practice, one standard deviation); with a conflict the band of times is at least its class’s and covers what each figure says, to 60 %; heat within 0.8 to 1.2 of the class’s`,
      settledBy: `a cup test of ${called}: a batch left in its cup with a thermometer`
    }
  ]
}

function allowed(a: string, b: string): number {
  const sigma = (figure: string): number => RATE_FIGURES.find(f => f.figure === figure)!.sigma
  return Math.exp(NINETY * Math.hypot(sigma(a), sigma(b)))
}
