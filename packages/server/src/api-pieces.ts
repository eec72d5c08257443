import type { Hono } from 'hono'
import { bodyJson, bodyText } from './body.ts'
import {
  baseNumber,
  DRAWING_NAME,
  documentText,
  editId,
  kindOf,
  MOST_DRAWING,
  pieceId,
  wholeNumber
} from './document.ts'
import type { Env, Parts } from './parts.ts'
import { refused, ServerProblem } from './problem.ts'
import { readingsOf } from './reading-rows.ts'

/** Pieces, their revisions, what was kept aside, drawings beside them. */
export function piecesApi(app: Hono<Env>, { pieces, feed, now, open }: Parts): void {
  app.get('/api/pieces', c => c.json({ pieces: pieces.list(c.req.query('away') === '1') }))

  app.get('/api/pieces/:id', c => {
    const id = pieceId(c.req.param('id'))
    const row = pieces.row(id)
    return c.json({
      id,
      revision: row.revision,
      saved: row.saved,
      document: JSON.parse(pieces.document(id, row.revision)),
      files: pieces.files(id),
      aside: pieces.asides(id),
      readings: readingsOf(open, id)
    })
  })

  app.put('/api/pieces/:id', async c => {
    const id = pieceId(c.req.param('id'))
    const body = await bodyJson(c.req.raw)
    const document = body['document'] as Record<string, unknown>
    const text = documentText(document, true)
    const says = typeof body['says'] === 'string' ? body['says'].slice(0, 400) : ''
    const kind = kindOf(document)
    const device = c.get('device')
    const saved = pieces.save({
      id,
      base: baseNumber(body['base']),
      edit: editId(body['edit']),
      text,
      name: document['name'] as string,
      kind,
      says,
      device: device?.name ?? null,
      saved: now().toISOString()
    })
    if (saved.kind === 'clash')
      throw new ServerProblem(
        409,
        'changed-elsewhere',
        'the piece was changed on another device meanwhile; what was sent is kept aside, nothing is lost',
        {
          revision: saved.revision,
          document: JSON.parse(saved.text),
          aside: saved.aside
        }
      )
    if (!saved.again) feed.tell('piece', { id, revision: saved.revision, device: device?.id ?? null })
    return c.json({ revision: saved.revision, saved: saved.saved })
  })

  app.get('/api/pieces/:id/revisions', c =>
    c.json({ revisions: pieces.revisions(pieceId(c.req.param('id'))) })
  )
  app.get('/api/pieces/:id/revisions/:n', c =>
    c.json({
      document: JSON.parse(pieces.document(pieceId(c.req.param('id')), wholeNumber(c.req.param('n'))))
    })
  )
  app.get('/api/pieces/:id/asides/:n', c =>
    c.json({ document: JSON.parse(pieces.aside(pieceId(c.req.param('id')), wholeNumber(c.req.param('n')))) })
  )
  app.delete('/api/pieces/:id/asides/:n', c => {
    pieces.settleAside(pieceId(c.req.param('id')), wholeNumber(c.req.param('n')))
    return c.json({})
  })

  app.delete('/api/pieces/:id', c => {
    const id = pieceId(c.req.param('id'))
    pieces.putAway(id, now().toISOString())
    feed.tell('piece-away', { id })
    return c.json({})
  })
  app.post('/api/pieces/:id/back', c => {
    const id = pieceId(c.req.param('id'))
    pieces.bringBack(id)
    feed.tell('piece', { id, revision: pieces.row(id).revision, device: null })
    return c.json({})
  })

  app.put('/api/pieces/:id/files/:name', async c => {
    const id = pieceId(c.req.param('id'))
    const name = c.req.param('name')
    if (!DRAWING_NAME.test(name))
      throw refused(`the name "${name.slice(0, 60)}"; allowed: a plain name that ends with .svg`)
    const text = await bodyText(c.req.raw, MOST_DRAWING)
    if (!/^\uFEFF?\s*</.test(text) || !text.includes('<svg'))
      throw refused(`${name}: found no SVG; allowed: a drawing in SVG`)
    pieces.putFile(id, name, text, now().toISOString())
    feed.tell('piece', { id, revision: pieces.row(id).revision, device: c.get('device')?.id ?? null })
    return c.json({})
  })
  app.delete('/api/pieces/:id/files/:name', c => {
    pieces.removeFile(pieceId(c.req.param('id')), c.req.param('name'))
    return c.json({})
  })
}
