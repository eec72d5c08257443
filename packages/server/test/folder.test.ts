import { spawn, spawnSync } from 'node:child_process'
import { mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import Database from 'libsql'
import { afterAll, describe, expect, test } from 'vitest'
import { makeApp } from '../src/app.ts'
import { openFolder } from '../src/database.ts'
import { DeviceStore } from '../src/device-store.ts'
import { EventFeed } from '../src/event-feed.ts'
import { MIGRATIONS } from '../src/migrations.ts'
import { PieceStore } from '../src/piece-store.ts'
import { ShopStore } from '../src/shop-store.ts'
import { Site } from '../src/site.ts'
import { desk, pieceNamed } from './desk.ts'

const base = mkdtempSync(join(tmpdir(), 'castwright-folder-'))
const mounted: string[] = []
afterAll(() => {
  for (const at of mounted) spawnSync('umount', ['-l', at])
  rmSync(base, { recursive: true, force: true })
})
const now = () => new Date('2026-11-27T09:00:00Z')

describe('one server a folder', () => {
  test('a second one is told who has it, and the first goes on', () => {
    const folder = join(base, 'twice')
    const open = openFolder(folder, now)
    expect(() => openFolder(folder, now)).toThrow(
      `in use by process ${process.pid}; allowed: one server a folder`
    )
    const elsewhere = spawnSync(process.execPath, [join(import.meta.dirname, 'killed-server.mjs'), folder], {
      encoding: 'utf8'
    })
    expect(elsewhere.status).not.toBe(0)
    expect(elsewhere.stderr).toContain(`in use by process ${process.pid}`)
    open.db.exec('CREATE TABLE still_ours (a)')
    open.close()
    openFolder(folder, now).close()
  })
  test('what a killed one left is taken over, whoever has its number now', async () => {
    const folder = join(base, 'left')
    const child = spawn(process.execPath, [join(import.meta.dirname, 'killed-server.mjs'), folder])
    await new Promise(done => child.stdout.once('data', done))
    expect(() => openFolder(folder, now)).toThrow(`in use by process ${child.pid}`)
    const ended = new Promise(done => child.once('exit', done))
    child.kill('SIGKILL')
    await ended
    // The first process of a system is always alive: a lock that went by numbers would hold for ever.
    writeFileSync(join(folder, 'in-use'), '1')
    openFolder(folder, now).close()
    expect(readdirSync(folder)).not.toContain('in-use')
  })
})

describe('schemas', () => {
  const older = Array.from({ length: MIGRATIONS.length - 1 }, (_, k) => k + 1)
  test('there is an older one to come from', () => expect(older.length).toBeGreaterThan(0))
  test.each(older)(
    'a file of schema %i is backed up as it was, migrated, and keeps what it held',
    version => {
      const folder = join(base, `schema-${version}`)
      mkdirSync(folder)
      const db = new Database(join(folder, 'castwright.db'))
      for (const step of MIGRATIONS.slice(0, version)) db.exec(step)
      const text = JSON.stringify(pieceNamed('Old', { note: 'ä "quoted"' }))
      // As the first schema wrote it: no later step may lose it.
      db.prepare('INSERT INTO piece VALUES (?, ?, NULL, 1, ?, NULL)').run('oldpiece01', 'Old', 'then')
      db.prepare('INSERT INTO revision VALUES (?, 1, ?, ?, ?, NULL, ?)').run(
        'oldpiece01',
        'old-edit-1',
        text,
        '',
        'then'
      )
      db.prepare("INSERT INTO shop VALUES (1, 'old-shop-1', '{}', NULL, 'then')").run()
      db.exec(`PRAGMA user_version = ${version}`)
      db.close()
      const open = openFolder(folder, now)
      expect(open.backup).toBe(now().toISOString())
      expect(new PieceStore(open.db).document('oldpiece01', 1)).toBe(text)
      expect(open.db.prepare('SELECT count(*) AS n FROM shop').get()).toMatchObject({ n: 1 })
      expect(open.db.prepare('PRAGMA integrity_check').get()).toMatchObject({ integrity_check: 'ok' })
      // What a new file has, this one has.
      const fresh = openFolder(join(base, `fresh-${version}`), now)
      const tables = (d: typeof open.db) =>
        (
          d.prepare('SELECT sql FROM sqlite_master WHERE sql IS NOT NULL ORDER BY name').all() as {
            sql: string
          }[]
        ).map(r => r.sql)
      expect(tables(open.db)).toEqual(tables(fresh.db))
      fresh.close()
      open.close()
      const kept = readdirSync(join(folder, 'backups'))
      expect(kept).toHaveLength(1)
      const copy = new Database(join(folder, 'backups', kept[0]!))
      expect(copy.prepare('PRAGMA user_version').get()).toMatchObject({ user_version: version })
      expect(copy.prepare('SELECT document FROM revision').get()).toMatchObject({ document: text })
      copy.close()
      // Opened again it is as it should be: no second copy.
      openFolder(folder, now).close()
      expect(readdirSync(join(folder, 'backups'))).toEqual(kept)
    }
  )
  test('a file of a newer build is refused and left as it was', () => {
    const folder = join(base, 'newer')
    mkdirSync(folder)
    const db = new Database(join(folder, 'castwright.db'))
    db.exec('PRAGMA user_version = 99')
    db.close()
    expect(() => openFolder(folder, now)).toThrow(/found schema 99; allowed: up to/)
  })
  test('a file that is no database is refused with words', () => {
    const folder = join(base, 'words')
    mkdirSync(folder)
    writeFileSync(join(folder, 'castwright.db'), 'these are words and no database '.repeat(200))
    expect(() => openFolder(folder, now)).toThrow(/castwright\.db in .*: found .*; allowed: a database/)
  })
})

/** A small disk of its own, where this user may have one. */
function disk(name: string, kb: number): string | null {
  const at = join(base, name)
  mkdirSync(at)
  const done = spawnSync('mount', ['-t', 'tmpfs', '-o', `size=${kb}k`, 'tmpfs', at])
  if (done.status !== 0) return null
  mounted.push(at)
  return at
}

describe('a disk that does not take it', () => {
  const small = disk('small', 1500)
  test.skipIf(small === null)(
    'full: said so, nothing lost, reading goes on; saved once there is room',
    async () => {
      const d = await desk({ dataDir: small! })
      const document = (n: number) => pieceNamed('Full', { n, filling: 'x'.repeat(60_000) })
      let base = 0
      let full: Response | null = null
      while (full === null && base < 200) {
        const answer = await d.ask('PUT', '/api/pieces/fulldisk01', {
          base,
          edit: `full-edit-${base}`,
          document: document(base)
        })
        if (answer.status === 200) base++
        else full = answer
      }
      expect(full!.status).toBe(507)
      expect(((await full!.json()) as { error: { code: string; says: string } }).error.says).toMatch(
        /full: nothing was changed/
      )
      expect(base).toBeGreaterThan(2)
      for (let n = 1; n <= base; n++) {
        const got = (await (await d.ask('GET', `/api/pieces/fulldisk01/revisions/${n}`)).json()) as {
          document: unknown
        }
        expect(JSON.stringify(got.document)).toBe(JSON.stringify(document(n - 1)))
      }
      expect(spawnSync('mount', ['-o', 'remount,size=8000k', small!]).status).toBe(0)
      expect(
        (
          await d.ask('PUT', '/api/pieces/fulldisk01', {
            base,
            edit: `full-edit-${base}`,
            document: document(base)
          })
        ).status
      ).toBe(200)
      await d.close()
    }
  )

  const fixed = join(base, 'fixed')
  const readable = join(base, 'readable')
  mkdirSync(fixed)
  mkdirSync(readable)
  const bound = spawnSync('mount', ['--bind', fixed, readable]).status === 0
  if (bound) mounted.push(readable)
  test.skipIf(!bound)('read-only: a server does not start on it, says why, and changes nothing', async () => {
    const d = await desk({ dataDir: fixed })
    await d.ask('PUT', '/api/pieces/readonly01', {
      base: 0,
      edit: 'read-edit1',
      document: pieceNamed('Read')
    })
    await d.close()
    expect(spawnSync('mount', ['-o', 'remount,bind,ro', readable]).status).toBe(0)
    const before = readdirSync(fixed).sort()
    await expect(desk({ dataDir: readable })).rejects.toThrow(/allowed: a folder that can be written/)
    expect(readdirSync(fixed).sort()).toEqual(before)
  })

  test('a database that turned read-only under a server: said so, nothing lost, reading goes on', async () => {
    const open = openFolder(join(base, 'turned'), now)
    const pieces = new PieceStore(open.db)
    const devices = new DeviceStore(open.db)
    const { words } = devices.open(now().getTime())
    const { secret } = devices.pair({ words }, 'Phone', 'here', now())
    const later = () => new Date('2026-11-27T10:00:00Z')
    const app = makeApp(
      {
        open,
        pieces,
        devices,
        shop: new ShopStore(open.db),
        feed: new EventFeed(1),
        engine: () => import('@castwright/engine'),
        now: later,
        version: 'test',
        https: false,
        lan: true,
        urls: () => ['http://desk.test']
      },
      { hosts: new Set(['desk.test']), https: false, devices, now: later },
      new Site(null),
      () => undefined,
      () => undefined
    )
    const ask = (method: string, path: string, body?: unknown) =>
      app.request(`http://desk.test${path}`, {
        method,
        headers: {
          host: 'desk.test',
          cookie: `castwright=${secret}`,
          'x-castwright': '1',
          'content-type': 'application/json'
        },
        ...(body === undefined ? {} : { body: JSON.stringify(body) })
      })
    const edit = (n: number) => ({ base: n, edit: `read-edit${n}`, document: pieceNamed('Read', { n }) })
    expect((await ask('PUT', '/api/pieces/readonly02', edit(0))).status).toBe(200)
    // SQLite refuses a write now as it does on a disk that was remounted read-only under it.
    open.db.exec('PRAGMA query_only = ON')
    const refused = await ask('PUT', '/api/pieces/readonly02', edit(1))
    expect(refused.status).toBe(500)
    expect(await refused.json()).toMatchObject({
      error: { code: 'read-only', says: expect.stringMatching(/cannot be written: nothing was changed/) }
    })
    // A paired device too, though when it was seen cannot be written down.
    const got = (await (await ask('GET', '/api/pieces/readonly02')).json()) as { document: { n: number } }
    expect(got.document.n).toBe(0)
    open.db.exec('PRAGMA query_only = OFF')
    expect((await ask('PUT', '/api/pieces/readonly02', edit(1))).status).toBe(200)
    open.close()
  })

  // Where no disk of our own may be had: the system lets a process write no file longer than this.
  test('no file may grow: said so, nothing lost, reading goes on, and it opens again whole', async () => {
    const folder = join(base, 'limited')
    const line = `ulimit -f 600; trap '' XFSZ; exec "${process.execPath}" "${join(import.meta.dirname, 'killed-server.mjs')}" "${folder}"`
    const child = spawn('bash', ['-c', line], { stdio: ['ignore', 'pipe', 'inherit'] })
    const url = await new Promise<string>(done => child.stdout.once('data', d => done(String(d).trim())))
    const text = (n: number) => JSON.stringify(pieceNamed('Limited', { n, filling: 'x'.repeat(40_000) }))
    const put = (n: number) =>
      fetch(`${url}/api/pieces/limited001`, {
        method: 'PUT',
        headers: { 'content-type': 'application/json', 'x-castwright': '1' },
        body: `{"base":${n},"edit":"limit-edit-${n}","document":${text(n)}}`
      })
    let kept = 0
    let last: Response
    for (;;) {
      last = await put(kept)
      if (last.status !== 200 || kept > 100) break
      kept++
    }
    expect([500, 507]).toContain(last.status)
    expect(((await last.json()) as { error: { says: string } }).error.says).toContain('nothing was changed')
    expect(kept).toBeGreaterThan(2)
    const newest = (await (await fetch(`${url}/api/pieces/limited001`)).json()) as { revision: number }
    expect(newest.revision).toBe(kept)
    const ended = new Promise(done => child.once('exit', done))
    child.kill('SIGKILL')
    await ended
    const open = openFolder(folder, now)
    expect(open.db.prepare('PRAGMA integrity_check').get()).toMatchObject({ integrity_check: 'ok' })
    for (let n = 0; n < kept; n++)
      expect(new PieceStore(open.db).document('limited001', n + 1) === text(n), `revision ${n + 1}`).toBe(
        true
      )
    open.close()
  })
})
