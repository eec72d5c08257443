import { accessSync, constants, statfsSync, statSync } from 'node:fs'
import { join } from 'node:path'
import type { Hono } from 'hono'
import { streamSSE } from 'hono/streaming'
import { renderSVG } from 'uqr'
import { bodyJson } from './body.ts'
import { baseNumber, documentText, editId, wholeNumber } from './document.ts'
import { COOKIE } from './guard.ts'
import type { Env, Parts } from './parts.ts'
import { ServerProblem } from './problem.ts'

/** A comment goes out this often, so that a dead line is noticed, ms. */
const BEAT_MS = 20_000
const YEAR_S = 31_536_000
/** Writes that wait for a listener; one that lets more wait than events are kept is gone. */
const MOST_UNTAKEN = 1200

/** Shop, events, devices, health: what is not of one piece. */
export function deskApi(app: Hono<Env>, parts: Parts): void {
  const { shop, feed, devices, now } = parts

  app.get('/api/hello', c =>
    c.json({
      castwright: 1,
      version: parts.version,
      device: c.get('device'),
      https: parts.https,
      lan: parts.lan
    })
  )

  app.get('/api/shop', c => {
    const { revision, text } = shop.newest()
    return c.json({ revision, document: text === null ? null : JSON.parse(text), aside: shop.asides() })
  })
  app.put('/api/shop', async c => {
    const body = await bodyJson(c.req.raw)
    const text = documentText(body['document'], false)
    const device = c.get('device')
    const saved = shop.save(
      baseNumber(body['base']),
      editId(body['edit']),
      text,
      device?.name ?? null,
      now().toISOString()
    )
    if (saved.kind === 'clash')
      throw new ServerProblem(
        409,
        'changed-elsewhere',
        'the shop was changed on another device meanwhile; what was sent is kept aside, nothing is lost',
        {
          revision: saved.revision,
          document: saved.text === null ? { castwright: 1 } : JSON.parse(saved.text),
          device: saved.device,
          aside: saved.aside
        }
      )
    if (!saved.again) feed.tell('shop', { revision: saved.revision, device: device?.id ?? null })
    return c.json({ revision: saved.revision, saved: saved.saved })
  })

  app.get('/api/shop/asides/:n', c =>
    c.json({ document: JSON.parse(shop.aside(wholeNumber(c.req.param('n')))) })
  )
  app.delete('/api/shop/asides/:n', c => {
    shop.settleAside(wholeNumber(c.req.param('n')))
    return c.json({})
  })

  app.get('/api/events', c => {
    const last = Number(c.req.header('last-event-id') ?? Number.NaN)
    const device = c.get('device')?.id ?? null
    return streamSSE(c, async stream => {
      let over: () => void = () => undefined
      const ended = new Promise<void>(done => {
        over = done
      })
      let waiting = 0
      // Writes keep their order; a listener that takes nothing is let go of, and comes back for what it missed.
      const write = (text: string) => {
        if (++waiting > MOST_UNTAKEN) over()
        stream
          .write(text)
          .then(() => waiting--)
          .catch(over)
      }
      const send = (e: { id: number; name: string; data: string }) =>
        write(`id: ${e.id}\nevent: ${e.name}\ndata: ${e.data}\n\n`)
      const missed = Number.isInteger(last) ? feed.since(last) : []
      const stop = feed.listen(send, device, over)
      // The number alone: whoever is cut off before the first event is told what came after this.
      if (missed === null) write(`id: ${feed.newest}\nevent: start-over\ndata: {}\n\n`)
      else if (missed.length === 0) write(`id: ${feed.newest}\n\n`)
      else for (const e of missed) send(e)
      const beat = setInterval(() => write(': here\n\n'), BEAT_MS)
      stream.onAbort(over)
      await ended
      clearInterval(beat)
      stop()
      await stream.close()
    })
  })

  app.post('/api/pairing', c => {
    atDesk(c.get('device')?.desk)
    const { token, words, expires } = devices.open(now().getTime())
    const url = `${parts.urls()[0]}/pair#${token}`
    return c.json({ words, url, expires, qr: renderSVG(url, { border: 2 }) })
  })
  app.post('/api/pair', async c => {
    const body = await bodyJson(c.req.raw, 4000)
    const from = c.env?.incoming?.socket.remoteAddress ?? 'unknown'
    const name = typeof body['name'] === 'string' ? body['name'] : ''
    const { secret, device } = devices.pair(body, name, from, now())
    c.header(
      'set-cookie',
      `${COOKIE}=${secret}; Path=/; HttpOnly; SameSite=Strict; Max-Age=${YEAR_S}${parts.https ? '; Secure' : ''}`
    )
    feed.tell('devices', {})
    return c.json({ device })
  })
  app.get('/api/devices', c => {
    const own = c.get('device')?.id
    return c.json({ devices: devices.list().map(d => ({ ...d, this: d.id === own })) })
  })
  app.delete('/api/devices/:id', c => {
    const own = c.get('device')
    const id = c.req.param('id')
    if (own?.id !== id) atDesk(own?.desk)
    devices.revoke(id)
    feed.end(id)
    feed.tell('devices', {})
    return c.json({})
  })

  app.get('/api/health', c => c.json(healthOf(parts)))
  app.get('/health', c => {
    const h = healthOf(parts)
    const rows = Object.entries({ ...h, database: undefined, ...h.database })
      .filter(([, v]) => v !== undefined)
      .map(([k, v]) => `<tr><th scope="row">${k}</th><td>${String(v ?? 'none')}</td></tr>`)
    return c.html(
      `<!doctype html><html lang="en"><meta charset="utf-8"><title>Castwright: health</title><h1>Castwright: health</h1><table>${rows.join('')}</table></html>`
    )
  })
}

function atDesk(desk: boolean | undefined): void {
  if (desk !== true)
    throw new ServerProblem(403, 'desk-only', 'this is done at the desk: the machine the server runs on')
}

function writable(folder: string): 'writable' | 'read-only' {
  try {
    accessSync(folder, constants.W_OK)
    return 'writable'
  } catch {
    return 'read-only'
  }
}

function healthOf({ open, pieces, version }: Parts) {
  const integrity = (open.db.prepare('PRAGMA quick_check').get() as { quick_check: string }).quick_check
  const journal = (open.db.prepare('PRAGMA journal_mode').get() as { journal_mode: string }).journal_mode
  const disk = statfsSync(open.folder)
  return {
    ok: integrity === 'ok',
    version,
    database: {
      integrity,
      journal,
      pieces: pieces.list().length,
      bytes: statSync(join(open.folder, 'castwright.db')).size
    },
    backup: open.backup,
    disk: writable(open.folder),
    uptimeS: Math.round(process.uptime()),
    memoryMb: Math.round(process.memoryUsage.rss() / 1e6),
    diskFreeMb: Math.round((disk.bavail * disk.bsize) / 1e6)
  }
}
