import { parentPort } from 'node:worker_threads'
import { deflateSync } from 'node:zlib'
import type { PageAssets, PlanInput, WholeCast } from '@castwright/engine'
import {
  buyCsv,
  castRun,
  checkPiece,
  checkShop,
  InputProblem,
  page,
  plan,
  pngAddress,
  readReadings,
  runSheetHtml,
  runSheetMarkdown,
  usualShop
} from '@castwright/engine'

/** What a plan is asked for, and what of it. */
export interface PlanAsk {
  readonly number: number
  readonly sheet: 'plan.json' | 'page.html' | 'run-sheet.html' | 'run-sheet.md' | 'buy.csv'
  readonly document: unknown
  readonly shop: unknown
  readonly files: Readonly<Record<string, string>>
  readonly readings: readonly unknown[]
  readonly asOf: string
  readonly despite: readonly { readonly id: string; readonly because: string }[]
  readonly assets: PageAssets | null
}

export type PlanAnswer =
  | { readonly number: number; readonly kind: 'text'; readonly text: string }
  /** The piece or the question cannot be used; or a stop stands where nothing is written then. */
  | { readonly number: number; readonly kind: 'refused'; readonly code: string; readonly says: string }

/** The thread that plans for the server: it is ended when it takes too long, and the server goes on. */
parentPort?.on('message', (ask: PlanAsk) => {
  parentPort!.postMessage(answered(ask))
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

function answered(ask: PlanAsk): PlanAnswer {
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
    if (ask.sheet.startsWith('run-sheet') && planned.plan.verdict === 'stop')
      return {
        number,
        kind: 'refused',
        code: 'stop-stands',
        says: `the run sheet is not written while a stop stands. ${planned.plan.says}`
      }
    switch (ask.sheet) {
      case 'plan.json':
        return { number, kind: 'text', text: `${JSON.stringify(planned.plan, null, 2)}\n` }
      case 'buy.csv':
        return { number, kind: 'text', text: buyCsv(planned.plan) }
      case 'run-sheet.md':
        return { number, kind: 'text', text: runSheetMarkdown(planned) }
      case 'run-sheet.html':
        return { number, kind: 'text', text: runSheetHtml(planned, { fonts: ask.assets?.fonts ?? [] }) }
      case 'page.html':
        if (ask.assets === null)
          return {
            number,
            kind: 'refused',
            code: 'not-built',
            says: 'the page is not built: run "npm start" once'
          }
        return {
          number,
          kind: 'text',
          text: page(planned, ask.assets, image => pngAddress(image, deflateSync))
        }
    }
  } catch (e) {
    if (e instanceof InputProblem) return { number, kind: 'refused', code: 'not-usable', says: e.message }
    return {
      number,
      kind: 'refused',
      code: 'bug',
      says: `the plan met a fault of its own: ${e instanceof Error ? e.message : String(e)}`
    }
  }
}
