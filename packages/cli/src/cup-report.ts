import type { CupResult } from '@castwright/engine'
import { decimals, formatMinutes } from '@castwright/engine'

/** Not shown: what tells of cup and thermometer; the rate's own speed, which depends on the other figures; shapes of laws. */
const NOT_SHOWN = ['film', 'inside', 'lag', 'clock', 'start', 'room', 'activity', 'm', 'n', 'rise', 'flow']
/** Units that say more than "1". */
const UNIT: Readonly<Record<string, string>> = { ratio: 'share', gel: 'share' }
/** Rows of the picture of residuals, and half its width in characters. */
const ROWS = 24
const HALF = 12

/** What a cup test says, for the terminal: words, parameters with their bands, residuals. */
export function cupReport(resin: string, { fit, report, says }: CupResult): string {
  const { faster } = report
  // One figure for the speed, the one that is told above: a thin film's, all that was learned together.
  const speed = line('speed, a thin film at 22 °C', 'times', faster.central, faster.low, faster.high, 1, null)
  const rows = report.parameters
    .filter(p => !NOT_SHOWN.includes(p.name))
    .map(p => line(p.about, UNIT[p.name] ?? p.unit, p.value, p.low, p.high, p.classValue, p.learned))
  return `${resin}, by this cup

${says.join('\n')}

  ${''.padEnd(48)} ${'unit'.padEnd(8)} ${'value'.padStart(7)}  ${'9 of 10 within'.padEnd(18)} ${'class'.padStart(7)}  from the test
${[speed, ...rows].join('\n')}
${marks(fit.marks)}
${residuals(fit.residuals)}`
}

function line(
  about: string,
  unit: string,
  value: number,
  low: number,
  high: number,
  classValue: number,
  learned: number | null
): string {
  return `  ${about.padEnd(48)} ${unit.padEnd(8)} ${figure(value).padStart(7)}  ${`${figure(low)} to ${figure(high)}`.padEnd(18)} ${figure(classValue).padStart(7)}  ${learned === null ? 'as above' : share(learned)}`
}

/** How well what was told by hand is met. */
function marks(all: CupResult['fit']['marks']): string {
  return all
    .map(m => {
      const met =
        m.fittedMin === undefined ? 'the fit never comes to it' : `the fit ${formatMinutes(m.fittedMin)}`
      const doubts = Math.abs(m.sigmas)
      return `\n  ${m.mark}: told ${formatMinutes(m.toldMin)}, ${met}; ${doubts < 1 ? 'within' : `${decimals(doubts, 1)} times`} its doubt`
    })
    .join('')
    .concat(all.length === 0 ? '' : '\n')
}

// How much of what is believed of it comes from the test.
function share(learned: number): string {
  return learned > 0.66 ? 'most' : learned > 0.33 ? 'part' : learned > 0.1 ? 'a little' : 'nothing'
}

function residuals(all: CupResult['fit']['residuals']): string {
  const step = Math.max(1, Math.ceil(all.length / ROWS))
  const most = Math.max(0.5, ...all.map(r => Math.abs(r.offK)))
  const lines = all
    .filter((_, i) => i % step === 0 || i === all.length - 1)
    .map(r => {
      const at = Math.round((r.offK / most) * HALF)
      const bar = Array.from({ length: 2 * HALF + 1 }, (_, k) =>
        k === HALF + at ? 'o' : k === HALF ? '|' : ' '
      ).join('')
      return `  ${formatMinutes(r.timeMin).padEnd(12)} ${degrees(r.measuredC)} ${degrees(r.fittedC)} ${signed(r.offK).padStart(6)}  ${bar}`
    })
  return `  ${'after'.padEnd(12)} ${'read, °C'.padStart(8)} ${'fitted'.padStart(8)} ${'off, K'.padStart(6)}  ${`-${decimals(most, 1)}`.padEnd(HALF)}0${`+${decimals(most, 1)}`.padStart(HALF)}
${lines.join('\n')}
`
}

function degrees(c: number): string {
  return decimals(c, 1, 1).padStart(8)
}

function signed(x: number): string {
  return `${x > 0 ? '+' : ''}${decimals(x, 1, 1)}`
}

function figure(x: number): string {
  return Number(x.toPrecision(3)).toString()
}
