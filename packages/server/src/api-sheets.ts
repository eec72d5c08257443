import type { PageAssets, Paper } from '@castwright/engine'
import type { Hono } from 'hono'
import { pieceId } from './document.ts'
import type { Env, Parts } from './parts.ts'
import { MOST_SHOWN } from './photo.ts'
import { PhotoStore } from './photo-store.ts'
import type { Planner } from './planner.ts'
import { refused } from './problem.ts'
import { readingsOf } from './reading-rows.ts'
import type { SheetName } from './sheet-kind.ts'
import { SHEETS } from './sheet-kind.ts'

const NAMES = Object.keys(SHEETS) as SheetName[]

/** Plan, page and sheets of a piece, made when they are asked for. */
export function sheetsApi(
  app: Hono<Env>,
  { open, pieces, shop, now }: Parts,
  planner: Planner,
  assets: () => PageAssets | null
): void {
  const photos = new PhotoStore(open.db)
  for (const sheet of NAMES) {
    const { type } = SHEETS[sheet]
    const html = type.startsWith('text/html')
    app.get(`/api/pieces/:id/${sheet}`, async c => {
      const id = pieceId(c.req.param('id'))
      const { revision } = pieces.row(id)
      const shopText = shop.newest().text
      const readings = readingsOf(open, id)
      const made = await planner.plan({
        sheet,
        document: JSON.parse(pieces.document(id, revision)),
        shop: shopText === null ? null : JSON.parse(shopText),
        files: pieces.files(id),
        readings,
        asOf: momentOf(c.req.query('asOf')) ?? now().toISOString(),
        despite: despiteOf(c.req.queries('despite') ?? [], c.req.queries('because') ?? []),
        assets: html ? assets() : null,
        paper: paperOf(c.req.query('paper')),
        ...(sheet === 'as-made.pdf' && { photos: photos.named(id, photoNames(readings), MOST_SHOWN) })
      })
      return new Response(typeof made === 'string' ? made : (made as Uint8Array<ArrayBuffer>), {
        headers: {
          'content-type': type,
          'cache-control': 'no-store',
          ...(html && typeof made === 'string' ? { 'content-security-policy': policyOf(made) } : {})
        }
      })
    })
  }
}

function photoNames(readings: readonly unknown[]): string[] {
  return readings.flatMap(r => {
    const { kind, photo } = r as { kind?: unknown; photo?: unknown }
    return kind === 'photo' && typeof photo === 'string' ? [photo] : []
  })
}

// A sheet says its own policy, by the hashes of its style and script; here it is held to it, in a sandbox of its own.
function policyOf(text: string): string {
  const own = /http-equiv="Content-Security-Policy" content="([^"]+)"/.exec(text)?.[1] ?? "default-src 'none'"
  return `${own.replaceAll('&#39;', "'")}; frame-ancestors 'none'; sandbox allow-scripts allow-modals`
}

function paperOf(text: string | undefined): Paper {
  if (text === undefined || text === 'A4') return 'A4'
  if (text === 'letter') return 'letter'
  throw refused(`"paper": found "${text.slice(0, 40)}"; allowed: A4, letter`)
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
