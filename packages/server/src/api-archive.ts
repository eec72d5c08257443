import type { Hono } from 'hono'
import { archiveOf, bringArchive } from './archive.ts'
import { bodyBytes } from './body.ts'
import { MOST_ARCHIVE } from './guard.ts'
import type { Env, Parts } from './parts.ts'

/** Everything out in one archive, and back in. */
export function archiveApi(app: Hono<Env>, { open, feed, now, version }: Parts): void {
  app.get('/api/export', () => {
    const day = now().toISOString().slice(0, 10)
    return new Response(Buffer.from(archiveOf(open.db, version)), {
      headers: {
        'content-type': 'application/zip',
        'content-disposition': `attachment; filename="castwright-${day}.zip"`
      }
    })
  })

  app.post('/api/import', async c => {
    const brought = bringArchive(open.db, await bodyBytes(c.req.raw, MOST_ARCHIVE), now)
    feed.tell('start-over', {})
    return c.json(brought)
  })
}
