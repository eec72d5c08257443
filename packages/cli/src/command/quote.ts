import { basename, dirname, resolve } from 'node:path'
import type { Actual, PlanInput, Planned, Quote } from '@castwright/engine'
import {
  actualOf,
  actualWords,
  careOf,
  clientQuote,
  daysOf,
  keptQuote,
  lastQuoted,
  privateQuote,
  quoteMany,
  quoteManyWords,
  quoteOf,
  readyMoment,
  surelyPlanned
} from '@castwright/engine'
import type { Given } from '../arguments.ts'
import { argumentsOf } from '../arguments.ts'
import { Failure } from '../failure.ts'
import { load } from '../load.ts'
import { momentOf } from '../moment.ts'
import { writeFolder } from '../out-folder.ts'
import { quoteReport } from '../quote-report.ts'
import { newId } from '../reading-id.ts'
import { appendReadings, readingsPath } from '../readings-file.ts'
import type { Command, Ended } from './command.ts'

/** Most pieces that are quoted at once. */
const MOST = 10_000

/** `castwright quote`: cost and price. */
export const quoteCommand: Command = {
  name: 'quote',
  about: 'what the piece costs the shop, and prices by the rules makers use; a sheet for the client',
  help: `castwright quote PIECE [--client | --actual] [--keep] [--count N] [--price N] [--json] [--out FILE] [--shop FILE] [--readings FILE] [--as-of MOMENT]
castwright quote PIECE PIECE... [--json] [--out FILE] [--shop FILE] [--as-of MOMENT]

Material used at the price of its packs, consumables, hands and machine by the minutes of the calendar's own tasks,
overhead and margin of the shop. Prices by the usual rules stand side by side, each with what it leaves for an hour.
Of several pieces one list is bought, packs together, and what they cost falls on each by what it uses.
What has no price is planned without and named. Ends with 0; 1 when a stop stands, 2 when the input cannot be used.

  --client          the sheet for the client: no costs
  --keep            keep it among the readings, to be held against what comes of it
  --actual          the last quote kept against what was read since: minutes, what was mixed, what was used; without
                    one, against what is planned without readings
  --count N         so many pieces alike; left out: those the piece plans
  --price N         what a price before tax would leave for an hour
  --json            all of it as JSON, sums in the smallest coins of the currency
  --out FILE        write it to a file
  --shop FILE       rates, prices and stock; left out: shop.json beside the piece, else the built-in shop
  --readings FILE   what was measured; left out: NAME.readings.jsonl beside NAME.piece.json, if there
  --as-of MOMENT    what counts as now
`,
  run: args => {
    const given = argumentsOf('quote', args, {
      flags: ['client', 'actual', 'keep', 'json'],
      texts: ['count', 'price', 'out', 'shop', 'readings', 'as-of'],
      words: [1, 20, 'one piece file or several']
    })
    if (given.flags.has('help')) return { out: quoteCommand.help, code: 0 }
    const asOf = momentOf(given.texts.get('as-of'))
    if (given.words.length > 1) return several(given, asOf)
    const count = countOf(given.texts.get('count'))
    const { input, says: loaded } = load({
      piece: given.words[0]!,
      shop: given.texts.get('shop'),
      readings: given.texts.get('readings')
    })
    const says = [...loaded]
    if (given.flags.has('actual') && (given.flags.has('client') || given.flags.has('keep')))
      throw new Failure(
        'castwright quote: found --actual together with --client or --keep; allowed: --actual by itself, for you alone'
      )
    const planned = surelyPlanned(input, { asOf, effort: 'preview' })
    const quote = quoteOf(planned, {
      asOf,
      ...(count === undefined ? {} : { count }),
      ...priceOf(given.texts.get('price'))
    })
    if (given.flags.has('client') && !quote.whole)
      throw new Failure(
        `castwright quote: found no price or rate for ${quote.cost.unpriced.join(', ')}; allowed for a client: a shop that has them all ("castwright quote" without --client shows the rest)`
      )
    if (given.flags.has('keep')) {
      const log = readingsPath(given.words[0]!, given.texts.get('readings'))
      const cut = appendReadings(log, [{ ...keptQuote(quote), id: newId(asOf), at: asOf }])
      says.push(
        ...(cut === null
          ? []
          : [`${log}: its last record was cut off and is left out: ${cut.slice(0, 120)}`]),
        `kept in ${log}`
      )
    }
    const text = given.flags.has('actual')
      ? actualText(held(input, planned, asOf), quote.name, given.flags.has('json'))
      : given.flags.has('json')
        ? `${JSON.stringify(quote, null, 2)}\n`
        : given.flags.has('client')
          ? clientText(quote, planned, input)
          : quoteReport(
              `${quote.name}: what it costs and what it is quoted at (private)`,
              privateQuote(quote)
            )
    return written(given.texts.get('out'), text, says, planned.plan.verdict === 'stop')
  }
}

const OF_ONE = ['client', 'actual', 'keep', 'count', 'price', 'readings'] as const

// Several pieces, bought for together.
function several(given: Given, asOf: string): Ended {
  const alone = OF_ONE.find(name => given.flags.has(name) || given.texts.has(name))
  if (alone !== undefined)
    throw new Failure(
      `castwright quote: found --${alone} with ${given.words.length} pieces; allowed with --${alone}: one`
    )
  const twice = given.words.find((w, i) => given.words.findIndex(v => resolve(v) === resolve(w)) < i)
  if (twice !== undefined)
    throw new Failure(`castwright quote: found ${twice} twice; allowed: each piece once`)
  const loaded = given.words.map(piece => load({ piece, shop: given.texts.get('shop') }))
  // One shop: packs, shelf and prices are shared.
  const { shop } = loaded[0]!.input
  const planned = loaded.map(l => surelyPlanned({ ...l.input, shop }, { asOf, effort: 'preview' }))
  const many = quoteMany(planned, asOf)
  const text = given.flags.has('json')
    ? `${JSON.stringify(many, null, 2)}\n`
    : quoteReport(`${planned.length} pieces, bought for together (private)`, quoteManyWords(many, shop))
  const stopped = planned.some(p => p.plan.verdict === 'stop')
  return written(
    given.texts.get('out'),
    text,
    loaded.flatMap(l => l.says),
    stopped
  )
}

function written(file: string | undefined, text: string, says: readonly string[], stopped: boolean): Ended {
  const err = [...says]
  if (file !== undefined) {
    writeFolder(dirname(file), new Map([[basename(file), text]]), true)
    err.push(`written: ${file}`)
  }
  return {
    out: file === undefined ? text : '',
    err: err.map(s => `${s}\n`).join(''),
    code: stopped ? 1 : 0
  }
}

function clientText(quote: Quote, planned: Planned, input: PlanInput): string {
  const { asOf } = quote
  return quoteReport(
    quote.name,
    clientQuote(quote, {
      sizeMm: planned.plan.totals.sizeMm,
      units: planned.work.shop.units,
      madeOf: careOf(planned).madeOf,
      ready: readyMoment(daysOf(input, { asOf }))
    })
  )
}

function actualText(actual: Actual, name: string, json: boolean): string {
  return json
    ? `${JSON.stringify({ ...actual, learned: Object.fromEntries(actual.learned) }, null, 2)}\n`
    : quoteReport(`${name}: what was quoted against what came of it (private)`, actualWords(actual))
}

// Without a quote that was kept: what was planned before anything was read.
function held(input: PlanInput, { work }: Planned, asOf: string): Actual {
  const kept = lastQuoted(work.readings)
  if (kept !== null) return actualOf(work, kept, asOf)
  const before = surelyPlanned({ ...input, readings: [] }, { asOf, effort: 'preview' })
  return actualOf(work, { ...keptQuote(quoteOf(before, { asOf })), id: 'not-kept', at: asOf }, asOf)
}

function priceOf(text: string | undefined): { readonly price?: number } {
  if (text === undefined) return {}
  const price = Number(text)
  if (/^[0-9.]+$/.test(text) && Number.isFinite(price) && price <= 1e9) return { price }
  throw new Failure(
    `castwright quote: found --price ${text}; allowed: an amount in the currency of the shop, such as 130`
  )
}

function countOf(text: string | undefined): number | undefined {
  if (text === undefined) return undefined
  const n = Number(text)
  if (Number.isInteger(n) && n >= 1 && n <= MOST) return n
  throw new Failure(`castwright quote: found --count ${text}; allowed: a whole number from 1 to ${MOST}`)
}
