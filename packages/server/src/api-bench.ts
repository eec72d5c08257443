import { createHash } from 'node:crypto'
import type { Hono } from 'hono'
import { bodyBytes, bodyJson } from './body.ts'
import { MOST_LAID, PHOTO_ID, pieceId } from './document.ts'
import { letGo } from './memory.ts'
import type { Env, Parts } from './parts.ts'
import { PhotoStore } from './photo-store.ts'
import { pictureOf } from './picture.ts'
import { refused, ServerProblem } from './problem.ts'
import { readingsOf } from './reading-rows.ts'

/** Largest photo, bytes; photos a piece takes; longest note on how a photo was laid, characters. */
const MOST_PHOTO = 12_000_000
const MOST_PHOTOS = 200

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
    const id = createHash('sha256').update(bytes).digest('hex').slice(0, 24)
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
    return c.json({ readings: readingsOf(open, id) })
  })

  app.post('/api/pieces/:id/readings', async c => {
    const piece = pieces.row(pieceId(c.req.param('id'))).id
    const body = await bodyJson(c.req.raw, MOST_LAID)
    const { InputProblem, readReadings } = await engine()
    let record: { id: string }
    try {
      const { readings } = readReadings(`${JSON.stringify(body)}\n`, 'the reading')
      record = readings[0] as { id: string }
    } catch (e) {
      if (e instanceof InputProblem) throw refused(e.message)
      throw e
    }
    const { changes } = db
      .prepare('INSERT OR IGNORE INTO reading (id, piece, record, saved) VALUES (?, ?, ?, ?)')
      .run(record.id, piece, JSON.stringify(body), now().toISOString())
    if (changes > 0) feed.tell('reading', { piece, id: record.id })
    return c.json({ id: record.id, again: changes === 0 })
  })
}

function photoId(id: string): string {
  if (!PHOTO_ID.test(id)) throw refused('the id of a photo: allowed: 24 hexadecimal digits')
  return id
}
