import { surelyChecked } from '@castwright/engine'
import { argumentsOf } from '../arguments.ts'
import { load } from '../load.ts'
import { momentOf } from '../moment.ts'
import { checkReport } from '../report.ts'
import type { Command } from './command.ts'

/** `castwright check`: what is wrong with a piece. */
export const checkCommand: Command = {
  name: 'check',
  about: 'what is wrong with a piece, why, and the smallest change that mends it',
  help: `castwright check PIECE [--json] [--shop FILE] [--readings FILE] [--as-of MOMENT]

Reads a piece and says whether it will work. Ends with 0 when no stop stands, 1 when one does, 2 when the
input cannot be used. Heat is told from one column of each pour, which takes no time; where that says stop, the
whole mould is cast coarsely first.

  --json            the findings as JSON
  --shop FILE       your own facts; left out: shop.json beside the piece, else the built-in shop
  --readings FILE   what was measured; left out: NAME.readings.jsonl beside NAME.piece.json, if there
  --as-of MOMENT    what counts as now, for example 2026-12-05T09:00+01:00
`,
  run: args => {
    const given = argumentsOf('check', args, {
      flags: ['json'],
      texts: ['shop', 'readings', 'as-of'],
      words: [1, 1, 'one piece file']
    })
    if (given.flags.has('help')) return { out: checkCommand.help, code: 0 }
    const asOf = momentOf(given.texts.get('as-of'))
    const { input, says } = load({
      piece: given.words[0]!,
      shop: given.texts.get('shop'),
      readings: given.texts.get('readings')
    })
    const checked = surelyChecked(input, { asOf })
    const out = given.flags.has('json')
      ? `${JSON.stringify({ verdict: checked.verdict, totals: checked.totals, findings: checked.findings }, null, 2)}\n`
      : checkReport(input.piece.value.name, checked)
    return { out, err: says.map(s => `${s}\n`).join(''), code: checked.verdict === 'stop' ? 1 : 0 }
  }
}
