import { basename, dirname, resolve } from 'node:path'
import { daysData, daysIcs, daysOfMany, foundInDays, ordersOf } from '@castwright/engine'
import { argumentsOf } from '../arguments.ts'
import { daysReport } from '../days-report.ts'
import { Failure } from '../failure.ts'
import { load } from '../load.ts'
import { momentOf } from '../moment.ts'
import { ordersReport } from '../orders-report.ts'
import { writeFolder } from '../out-folder.ts'
import { wayTaken, writeTaken } from '../take.ts'
import type { Command } from './command.ts'

/** `castwright days`: when what is done. */
export const daysCommand: Command = {
  name: 'days',
  about: 'when what is done: tasks in your hours at the bench, windows kept, alarms, dates to order by',
  help: `castwright days PIECE [PIECE...] [--json] [--ics FILE] [--shop FILE] [--readings FILE] [--as-of MOMENT]
castwright days PIECE --orders [--take N -o FILE] [--json] [--shop FILE] [--readings FILE] [--as-of MOMENT]

Places every task of a piece, or of several that share hands, machine and helpers, in the hours of the shop: windows of
the resin are kept, peaks near a limit and the first hours of a pour have somebody there, what is begun stays. Where no
calendar is possible it names what clashes and the ways out. Ends with 0 when there is a calendar, 1 when there is none,
2 when the input cannot be used.

With --orders it looks for another order of the steps that is ready sooner, costs less or risks less: each is planned
anew and held against the one that stands. What spoils the piece is refused, with the reason.

  --json            tasks with clock times as JSON
  --ics FILE        write the calendar as an iCalendar file, with alarms
  --orders          other orders of the steps of one piece, the best first
  --take N          writes the piece with order N; with -o FILE
  -o FILE           where to; where it is there already, it is kept as FILE.before
  --shop FILE       your own facts; left out: shop.json beside the piece, else the built-in shop
  --readings FILE   what was measured, of one piece; left out: NAME.readings.jsonl beside NAME.piece.json, if there
  --as-of MOMENT    what counts as now
`,
  run: args => {
    const given = argumentsOf('days', args, {
      flags: ['json', 'orders'],
      texts: ['ics', 'take', 'out', 'shop', 'readings', 'as-of'],
      words: [1, 20, 'one piece file or several']
    })
    if (given.flags.has('help')) return { out: daysCommand.help, code: 0 }
    const asOf = momentOf(given.texts.get('as-of'))
    const twice = given.words.find((w, i) => given.words.findIndex(v => resolve(v) === resolve(w)) < i)
    if (twice !== undefined)
      throw new Failure(`castwright days: found ${twice} twice; allowed: each piece once`)
    const loaded = given.words.map(piece =>
      load({ piece, shop: given.texts.get('shop'), readings: given.texts.get('readings') })
    )
    const err = loaded.flatMap(l => l.says)
    if (given.flags.has('orders')) {
      if (loaded.length > 1)
        throw new Failure(`castwright days: found ${loaded.length} pieces; allowed with --orders: one`)
      const { input } = loaded[0]!
      const orders = ordersOf(input, { asOf, effort: 'full' })
      const take = given.texts.get('take')
      const path = given.texts.get('out')
      const way = take === undefined ? null : wayTaken('days', orders.ways, take, path)
      return {
        out:
          way !== null
            ? writeTaken(input.piece.document, way.patch, way.does, path!)
            : given.flags.has('json')
              ? `${JSON.stringify(orders, null, 2)}\n`
              : ordersReport(input.piece.value.name, orders, input.shop.timeZone),
        err: err.map(s => `${s}\n`).join(''),
        code: 0
      }
    }
    if (given.texts.has('take') || given.texts.has('out'))
      throw new Failure('castwright days: found --take or -o; allowed with --orders alone')
    const days = daysOfMany(
      loaded.map(l => l.input),
      { asOf }
    )
    const findings = loaded.length === 1 ? foundInDays(days, loaded[0]!.input) : []
    const file = given.texts.get('ics')
    if (file !== undefined && days.clash === null) {
      writeFolder(dirname(file), new Map([[basename(file), daysIcs(days)]]), true)
      err.push(`written: ${file}`)
    }
    return {
      out: given.flags.has('json')
        ? `${JSON.stringify({ ...daysData(days), findings }, null, 2)}\n`
        : daysReport(days, findings),
      err: err.map(s => `${s}\n`).join(''),
      code: days.clash === null ? 0 : 1
    }
  }
}
