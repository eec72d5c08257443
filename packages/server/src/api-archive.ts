import { randomBytes } from 'node:crypto'
import { open as openFile, readdir, rm } from 'node:fs/promises'
import { join } from 'node:path'
import type { Hono } from 'hono'
import { MOST_ARCHIVE } from './archive-form.ts'
import { bringArchive } from './archive-in.ts'
import { archiveOf } from './archive-out.ts'
import { bodyParts } from './body.ts'
import { letGo } from './memory.ts'
import type { Env, Parts } from './parts.ts'
import { ServerProblem } from './problem.ts'

const COMING = /^coming-[0-9a-f]{16}\.zip$/

/** Everything out in one archive, and back in. */
export function archiveApi(app: Hono<Env>, { open, feed, now, version, engine }: Parts): void {
  let busy = false
  void tidied(open.folder)

  app.get('/api/export', async () => {
    const day = now().toISOString().slice(0, 10)
    const parts = archiveOf(join(open.folder, 'castwright.db'), version)
    // What is refused is refused before the answer begins.
    const first = await parts.next()
    return new Response(streamed(parts, first.value ?? new Uint8Array(0)), {
      headers: {
        'content-type': 'application/zip',
        'content-disposition': `attachment; filename="castwright-${day}.zip"`
      }
    })
  })

  app.post('/api/import', async c => {
    if (!/^application\/zip\b/i.test(c.req.header('content-type') ?? ''))
      throw new ServerProblem(415, 'not-zip', 'an archive: found other content; allowed: application/zip')
    if (busy)
      throw new ServerProblem(503, 'busy', 'an archive is being brought in already; try again after it')
    busy = true
    // On the disk, not in memory: an archive with its photos may be larger than that.
    const path = join(open.folder, `coming-${randomBytes(8).toString('hex')}.zip`)
    try {
      const file = await openFile(path, 'wx', 0o600)
      try {
        for await (const part of bodyParts(c.req.raw, MOST_ARCHIVE)) {
          await file.appendFile(part)
          letGo(part.length)
        }
      } finally {
        await file.close()
      }
      const brought = await bringArchive(open.db, path, engine)
      feed.tell('start-over', {})
      return c.json(brought)
    } finally {
      busy = false
      await rm(path, { force: true })
    }
  })
}

/** What a kill in the middle of an import left behind. */
async function tidied(folder: string): Promise<void> {
  for (const name of await readdir(folder).catch(() => []))
    if (COMING.test(name)) await rm(join(folder, name), { force: true }).catch(() => undefined)
}

function streamed(parts: AsyncGenerator<Uint8Array, void>, first: Uint8Array): ReadableStream<Uint8Array> {
  let next: Uint8Array | null = first
  return new ReadableStream(
    {
      async pull(controller) {
        if (next === null) {
          const part = await parts.next()
          if (part.done === true) return controller.close()
          next = part.value
        }
        controller.enqueue(next)
        next = null
      },
      cancel: () => void parts.return()
    },
    // None is made before it is asked for: a part may be a whole photo.
    { highWaterMark: 0 }
  )
}
