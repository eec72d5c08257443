import { parentPort } from 'node:worker_threads'
import type { Days, PageAssets, Paper, PlanInput, WholeCast } from '@castwright/engine'
import {
  castRun,
  checkPiece,
  checkShop,
  daysOf,
  InputProblem,
  plan,
  readReadings,
  usualShop
} from '@castwright/engine'
import type { SheetName } from './sheet-kind.ts'
import { SHEETS, SheetRefusal } from './sheet-kind.ts'
import { madeSheet } from './sheet-maker.ts'

/** What a plan is asked for, and what of it. */
export interface PlanAsk {
  readonly number: number
  readonly sheet: SheetName
  readonly document: unknown
  readonly shop: unknown
  readonly files: Readonly<Record<string, string>>
  readonly readings: readonly unknown[]
  readonly asOf: string
  readonly despite: readonly { readonly id: string; readonly because: string }[]
  readonly assets: PageAssets | null
  readonly paper: Paper
  /** Photos by name, for a sheet that shows them. */
  readonly photos?: Readonly<Record<string, Uint8Array>>
}

export type PlanAnswer =
  | { readonly number: number; readonly kind: 'made'; readonly made: string | Uint8Array }
  /** The piece or the question cannot be used; or a stop stands where nothing is written then. */
  | { readonly number: number; readonly kind: 'refused'; readonly code: string; readonly says: string }

/** The thread that plans for the server: it is ended when it takes too long, and the server goes on. */
parentPort?.on('message', (ask: PlanAsk) => {
  void answered(ask).then(answer => parentPort!.postMessage(answer))
})

let castFor = ''
let cast: WholeCast | null = null

// The sheets of a piece are asked for one after the other: the mould is cast once for all of them.
function wholeFor({ document, shop, files, readings }: PlanAsk, input: PlanInput): WholeCast | null {
  const key = JSON.stringify([document, shop, files, readings])
  if (key === castFor) return cast
  const run = castRun(input, { effort: 'full' })
  while (run !== null && !run.advance(1000));
  cast = run?.best() ?? null
  castFor = key
  return cast
}

let daysFor = ''
let made: Days | null = null

// And its days are found once.
function daysOnce({ document, shop, files, readings, asOf }: PlanAsk, input: PlanInput): Days {
  // To the minute, as the calendar counts.
  const key = JSON.stringify([document, shop, files, readings, Math.floor(Date.parse(asOf) / 60_000)])
  if (key !== daysFor || made === null) made = daysOf(input, { asOf })
  daysFor = key
  return made
}

async function answered(ask: PlanAsk): Promise<PlanAnswer> {
  const { number } = ask
  try {
    const { readings } = readReadings(
      ask.readings.map(r => `${JSON.stringify(r)}\n`).join(''),
      'the readings'
    )
    const input = {
      piece: checkPiece(ask.document, 'the piece'),
      shop: ask.shop === null ? usualShop() : checkShop(ask.shop, 'the shop').value,
      files: ask.files,
      readings,
      source: 'the piece'
    }
    const whole = wholeFor(ask, input)
    const planned = plan({ ...input, whole }, { asOf: ask.asOf, effort: 'full', despite: ask.despite })
    if (SHEETS[ask.sheet].keptBack && planned.plan.verdict === 'stop')
      return {
        number,
        kind: 'refused',
        code: 'stop-stands',
        says: `${ask.sheet.split('.')[0]!.replace('-', ' ')} is not written while a stop stands. ${planned.plan.says}`
      }
    const sheet = await madeSheet(ask.sheet, planned, { ...ask, input, days: () => daysOnce(ask, input) })
    if (sheet !== null) return { number, kind: 'made', made: sheet }
    return ask.sheet === 'page.html'
      ? { number, kind: 'refused', code: 'not-built', says: 'the page is not built: run "npm start" once' }
      : { number, kind: 'refused', code: 'nothing', says: `this piece has nothing to print as ${ask.sheet}` }
  } catch (e) {
    if (e instanceof SheetRefusal) return { number, kind: 'refused', code: 'nothing', says: e.message }
    if (e instanceof InputProblem) return { number, kind: 'refused', code: 'not-usable', says: e.message }
    return {
      number,
      kind: 'refused',
      code: 'bug',
      says: `the plan met a fault of its own: ${e instanceof Error ? e.message : String(e)}`
    }
  }
}
