import type { CupResult } from '@castwright/engine'
import { decimals, formatMinutes } from '@castwright/engine'

/** Parameters that tell of the cup and the thermometer: not shown beside those of the resin. */
const OF_THE_CUP = ['film', 'inside', 'lag', 'start', 'room']
/** Rows of the picture of residuals, and half its width in characters. */
const ROWS = 24
const HALF = 12

/** What a cup test says, for the terminal: words, parameters with their bands, residuals. */
export function cupReport(resin: string, { fit, report, says }: CupResult): string {
  const rows = report.parameters
    .filter(p => !OF_THE_CUP.includes(p.name))
    .map(
      p =>
        `  ${p.about.padEnd(46)} ${figure(p.value).padStart(7)}  ${`${figure(p.low)} to ${figure(p.high)}`.padEnd(18)} ${figure(p.classValue).padStart(7)}  ${share(p.learned)}`
    )
  return `${resin}, by this cup

${says.join('\n')}

  ${''.padEnd(46)} ${'value'.padStart(7)}  ${'9 of 10 within'.padEnd(18)} ${'class'.padStart(7)}  from the test
${rows.join('\n')}

${residuals(fit.residuals)}`
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
