import type { Hono } from 'hono'
import { bodyBytes, bodyJson } from './body.ts'
import { MOST_LAID, PHOTO_ID, pieceId, wholeNumber } from './document.ts'
import { letGo } from './memory.ts'
import type { Env, Parts } from './parts.ts'
import { MOST_PHOTO, MOST_PHOTOS, photoName } from './photo.ts'
import { PhotoStore } from './photo-store.ts'
import { pictureOf } from './picture.ts'
import { refused, ServerProblem } from './problem.ts'
import type { KeptReading } from './reading-rows.ts'
import { ReadingKeeper, readingsSince } from './reading-rows.ts'

/** Most readings sent at once, and their bytes. */
const MOST_READINGS = 2000
const MOST_BATCH = 2_500_000

interface PhotoRow {
  readonly id: string
  readonly type: string
  readonly width: number
  readonly height: number
  readonly size: number
  readonly laid: string | null
  readonly saved: string
}

/** Photos and readings of a piece. Readings are only ever added. */
export function benchApi(app: Hono<Env>, { open, pieces, feed, now, engine }: Parts): void {
  const { db } = open
  const photos = new PhotoStore(db)
  const keeper = new ReadingKeeper(open)
  app.get('/api/pieces/:id/photos', c => {
    const id = pieces.row(pieceId(c.req.param('id'))).id
    const rows = db
      .prepare(
        'SELECT id, type, width, height, LENGTH(bytes) AS size, laid, saved FROM photo WHERE piece = ? ORDER BY saved, id'
      )
      .all(id) as PhotoRow[]
    return c.json({ photos: rows.map(r => ({ ...r, laid: r.laid === null ? null : JSON.parse(r.laid) })) })
  })

  app.post('/api/pieces/:id/photos', async c => {
    const piece = pieces.row(pieceId(c.req.param('id'))).id
    const bytes = await bodyBytes(c.req.raw, MOST_PHOTO)
    const picture = pictureOf(bytes)
    const id = photoName(bytes)
    const { n } = db.prepare('SELECT COUNT(*) AS n FROM photo WHERE piece = ?').get(piece) as { n: number }
    if (n >= MOST_PHOTOS) throw refused(`found ${n} photos of this piece; allowed: ${MOST_PHOTOS}`)
    photos.keep({ id, piece, picture, bytes, laid: null, saved: now().toISOString() })
    feed.tell('photo', { piece, id })
    return c.json({ id, ...picture, bytes: bytes.length })
  })

  app.get('/api/pieces/:id/photos/:photo', c => {
    const photo = photos.photo(pieceId(c.req.param('id')), photoId(c.req.param('photo')))
    if (photo === null) throw new ServerProblem(404, 'no-such-photo', 'no such photo here')
    letGo(2 * photo.bytes.length)
    return new Response(photo.bytes, {
      headers: {
        'content-type': photo.type,
        'content-disposition': 'inline',
        'content-security-policy': "default-src 'none'; sandbox",
        'cache-control': 'private, max-age=31536000, immutable'
      }
    })
  })

  app.put('/api/pieces/:id/photos/:photo/laid', async c => {
    const laid = JSON.stringify(await bodyJson(c.req.raw, MOST_LAID))
    const { changes } = db
      .prepare('UPDATE photo SET laid = ? WHERE piece = ? AND id = ?')
      .run(laid, pieceId(c.req.param('id')), photoId(c.req.param('photo')))
    if (changes === 0) throw new ServerProblem(404, 'no-such-photo', 'no such photo here')
    return c.json({})
  })

  app.delete('/api/pieces/:id/photos/:photo', c => {
    db.prepare('DELETE FROM photo WHERE piece = ? AND id = ?').run(
      pieceId(c.req.param('id')),
      photoId(c.req.param('photo'))
    )
    return c.json({})
  })

  app.get('/api/pieces/:id/readings', c => {
    const id = pieces.row(pieceId(c.req.param('id'))).id
    return c.json(readingsSince(open, id, wholeNumber(c.req.query('since') ?? '0')))
  })

  // One reading, or { readings: [...] } of them: each counts once, however often it is sent.
  app.post('/api/pieces/:id/readings', async c => {
    const piece = pieces.row(pieceId(c.req.param('id'))).id
    const body = await bodyJson(c.req.raw, MOST_BATCH)
    const many = 'readings' in body
    const sent = many ? body['readings'] : [body]
    if (!Array.isArray(sent) || sent.length > MOST_READINGS)
      throw refused(
        `"readings": found ${Array.isArray(sent) ? sent.length : typeof sent}; allowed: a list of at most ${MOST_READINGS}`
      )
    const { InputProblem, readReadings } = await engine()
    const kept = sent.map((record): KeptReading => {
      const text = JSON.stringify(record)
      if (text.length > MOST_LAID)
        throw refused(`a reading: found ${text.length} characters; allowed: ${MOST_LAID}`)
      try {
        const { readings } = readReadings(`${text}\n`, 'the reading')
        return { id: readings[0]!.id, record: text }
      } catch (e) {
        if (e instanceof InputProblem) throw refused(e.message)
        throw e
      }
    })
    const fresh = await keeper.keep(piece, kept, now().toISOString())
    // One event however many came: who listens asks for what is new.
    const last = kept.findLast((_, i) => fresh[i])
    if (last !== undefined) feed.tell('reading', { piece, id: last.id })
    return many
      ? c.json({ ids: kept.map(r => r.id), again: fresh.filter(f => !f).length })
      : c.json({ id: kept[0]!.id, again: !fresh[0] })
  })
}

function photoId(id: string): string {
  if (!PHOTO_ID.test(id)) throw refused('the id of a photo: allowed: 24 hexadecimal digits')
  return id
}
