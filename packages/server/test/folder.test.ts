import { spawn, spawnSync } from 'node:child_process'
import { mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import Database from 'libsql'
import { afterAll, describe, expect, test } from 'vitest'
import { openFolder } from '../src/database.ts'
import { MIGRATIONS } from '../src/migrations.ts'
import { diskProblem } from '../src/problem.ts'
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
  test('a file of every older schema is backed up and migrated, and opens', () => {
    for (let version = 1; version < MIGRATIONS.length; version++) {
      const folder = join(base, `schema-${version}`)
      mkdirSync(folder)
      const db = new Database(join(folder, 'castwright.db'))
      for (const step of MIGRATIONS.slice(0, version)) db.exec(step)
      db.exec(`PRAGMA user_version = ${version}`)
      db.close()
      const open = openFolder(folder, now)
      expect(open.backup).toBe(now().toISOString())
      expect(readdirSync(join(folder, 'backups'))).toHaveLength(1)
      open.close()
    }
    expect(MIGRATIONS.length).toBeGreaterThan(0)
  })
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

  test('a database that turned read-only: said so, nothing lost, reading goes on', async () => {
    const d = await desk()
    await d.ask('PUT', '/api/pieces/readonly02', {
      base: 0,
      edit: 'read-edit1',
      document: pieceNamed('Read')
    })
    const db = new Database(join(d.folder, 'castwright.db'))
    db.exec('PRAGMA query_only = ON')
    // The same refusal SQLite gives on a disk that was remounted read-only under it.
    expect(() => db.exec("UPDATE piece SET name = 'x'")).toThrow(/readonly|read-only/i)
    expect(diskProblem(refusal(() => db.exec("UPDATE piece SET name = 'x'")))?.code).toBe('read-only')
    db.close()
    const got = (await (await d.ask('GET', '/api/pieces/readonly02')).json()) as {
      document: { name: string }
    }
    expect(got.document.name).toBe('Read')
    await d.close()
  })
})

function refusal(work: () => void): unknown {
  try {
    work()
  } catch (e) {
    return e
  }
  return null
}
