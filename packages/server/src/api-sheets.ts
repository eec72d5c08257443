import type { PageAssets } from '@castwright/engine'
import type { Hono } from 'hono'
import { pieceId } from './document.ts'
import type { Env, Parts } from './parts.ts'
import type { PlanAsk } from './plan-thread.ts'
import type { Planner } from './planner.ts'
import { refused } from './problem.ts'
import { readingsOf } from './reading-rows.ts'

const TYPES: Readonly<Record<PlanAsk['sheet'], string>> = {
  'plan.json': 'application/json',
  'page.html': 'text/html; charset=utf-8',
  'run-sheet.html': 'text/html; charset=utf-8',
  'run-sheet.md': 'text/markdown; charset=utf-8',
  'buy.csv': 'text/csv; charset=utf-8'
}
const SHEETS = Object.keys(TYPES) as PlanAsk['sheet'][]

/** Plan, page and sheets of a piece, made when they are asked for. */
export function sheetsApi(
  app: Hono<Env>,
  { open, pieces, shop, now }: Parts,
  planner: Planner,
  assets: () => PageAssets | null
): void {
  for (const sheet of SHEETS)
    app.get(`/api/pieces/:id/${sheet}`, async c => {
      const id = pieceId(c.req.param('id'))
      const { revision } = pieces.row(id)
      const shopText = shop.newest().text
      const text = await planner.plan({
        sheet,
        document: JSON.parse(pieces.document(id, revision)),
        shop: shopText === null ? null : JSON.parse(shopText),
        files: pieces.files(id),
        readings: readingsOf(open, id),
        asOf: momentOf(c.req.query('asOf')) ?? now().toISOString(),
        despite: despiteOf(c.req.queries('despite') ?? [], c.req.queries('because') ?? []),
        assets: TYPES[sheet].startsWith('text/html') ? assets() : null
      })
      return new Response(text, {
        headers: {
          'content-type': TYPES[sheet],
          'cache-control': 'no-store',
          ...(TYPES[sheet].startsWith('text/html') ? { 'content-security-policy': policyOf(text) } : {})
        }
      })
    })
}

// A sheet says its own policy, by the hashes of its style and script; here it is held to it, in a sandbox of its own.
function policyOf(text: string): string {
  const own = /http-equiv="Content-Security-Policy" content="([^"]+)"/.exec(text)?.[1] ?? "default-src 'none'"
  return `${own.replaceAll('&#39;', "'")}; frame-ancestors 'none'; sandbox allow-scripts allow-modals`
}

function momentOf(text: string | undefined): string | undefined {
  if (text === undefined) return undefined
  if (
    !/^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}(:\d{2}(\.\d+)?)?(Z|[+-]\d{2}:\d{2})$/.test(text) ||
    Number.isNaN(Date.parse(text))
  )
    throw refused(
      `"asOf": found "${text.slice(0, 40)}"; allowed: a moment with offset, such as 2026-12-05T09:00+01:00`
    )
  return text
}

function despiteOf(ids: readonly string[], reasons: readonly string[]): { id: string; because: string }[] {
  return ids.map((id, i) => {
    const because = (reasons[i] ?? '').replace(/\s+/g, ' ').trim()
    if (because.length < 3 || because.length > 300)
      throw refused(
        `"because" of ${id.slice(0, 40)}: found ${because.length} characters; allowed: a reason of 3 to 300`
      )
    return { id, because }
  })
}
