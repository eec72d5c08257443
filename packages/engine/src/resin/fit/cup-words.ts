import { decimals, formatC } from '../../quantity/format.ts'
import type { Band } from '../bands.ts'
import { type CupFit, LEAST_SIGMA_K } from './cup-fit.ts'
import type { CupReport } from './cup-report.ts'
import type { CupTest } from './cup-test.ts'

/** The fit strays by more than this from the readings: something was not as told, K. Practice. */
const STRAYS_K = 2.5

/** What was learned, in plain sentences, the most telling first. */
export function cupWords(test: CupTest, fit: CupFit, report: CupReport): readonly string[] {
  const { noise, peakSeen } = fit
  const { faster, heatJG, speedLearned, heatLearned, band } = report
  const why = peakSeen ? 'the cup hardly warmed' : 'the test ended before the peak'
  const lag = report.parameters.find(p => p.name === 'lag')!
  const read = fit.residuals.length
  return [
    speedLearned ? speed(faster) : `The test does not tell how fast it is: ${why}. The class stands.`,
    heatLearned
      ? `Its heat is ${decimals(heatJG.central, 0)} J/g, between ${decimals(heatJG.low, 0)} and ${decimals(heatJG.high, 0)}; the class has ${decimals(fit.base.kinetics.heatJPerKg / 1000, 0)}.`
      : `Its heat is not determined: ${why}. Taken as ${decimals(heatJG.central, 0)} J/g, between ${decimals(heatJG.low, 0)} and ${decimals(heatJG.high, 0)}.`,
    ...moment(test.stringsMin, 'strings', 'when it can be marbled'),
    ...moment(test.gelledMin, 'gelled', 'when it sets'),
    report.alone > band.time + 0.005
      ? `The cup alone leaves times open by ${decimals(100 * report.alone, 0)} % either way: the ${decimals(100 * band.time, 0)} % of the class stay.`
      : `Times are now good to ${decimals(100 * band.time, 0)} % either way.`,
    // At the least that is ever taken, nothing was found.
    ...(noise.sigmaK > LEAST_SIGMA_K + 0.01
      ? [`Readings stray by ${decimals(noise.sigmaK, 1)} K about the curve; ${read} readings were fitted.`]
      : []),
    ...(lag.learned > 0.3 ? [`The thermometer lags by about ${decimals(lag.value, 0)} s.`] : []),
    ...(noise.sigmaK > STRAYS_K
      ? [
          `That is more than a thermometer strays: look at the mass, the cup and the room of ${formatC(test.roomC)} again.`
        ]
      : []),
    'How it changes with temperature stays the class’s: a second cup in a colder or warmer room would tell.'
  ]
}

function speed({ central, low, high }: Band): string {
  const times = (x: number): string => decimals(x, x < 3 ? 2 : 1)
  if (low <= 1 && high >= 1)
    return `Your resin is as fast as its class, as far as this cup tells: ${times(central)} times, between ${times(low)} and ${times(high)}.`
  return central > 1
    ? `Your resin is ${times(central)} times faster than its class, between ${times(low)} and ${times(high)}.`
    : `Your resin is ${times(1 / central)} times slower than its class, between ${times(1 / high)} and ${times(1 / low)}.`
}

function moment(min: number | null, word: string, tells: string): string[] {
  return min === null ? [`No time for "${word}" was given: ${tells} keeps the class’s doubt.`] : []
}
