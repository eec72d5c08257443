import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, unlinkSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import Database from 'libsql'
import { MIGRATIONS } from './migrations.ts'
import { ServerProblem } from './problem.ts'

export type Db = Database.Database

/** Backups kept. */
const MOST_BACKUPS = 10

/** An open data folder: its database, and how to let go of it. */
export interface OpenFolder {
  readonly db: Db
  readonly folder: string
  /** Moment of the newest backup before a migration; null when there was none. */
  readonly backup: string | null
  close(): void
}

/**
 * Opens the database of a data folder: write-ahead log, every commit on the disk before it is acknowledged. A file
 * of an older schema is backed up, then migrated.
 * @throws ServerProblem when another server has the folder, when it cannot be written, when the file is no
 *   database of ours or of a newer build
 */
export function openFolder(folder: string, now: () => Date): OpenFolder {
  try {
    mkdirSync(folder, { recursive: true, mode: 0o700 })
    takeLock(folder)
  } catch (e) {
    if (e instanceof ServerProblem) throw e
    throw new ServerProblem(
      500,
      'folder',
      `the data folder ${folder}: found ${(e as Error).message}; allowed: a folder that can be written`
    )
  }
  try {
    const db = new Database(join(folder, 'castwright.db'))
    db.exec(
      'PRAGMA busy_timeout = 4000; PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL; PRAGMA foreign_keys = ON'
    )
    const backup = migrate(db, folder, now)
    return {
      db,
      folder,
      backup,
      close: () => {
        db.exec('PRAGMA wal_checkpoint(TRUNCATE)')
        db.close()
        freeLock(folder)
      }
    }
  } catch (e) {
    freeLock(folder)
    if (e instanceof ServerProblem) throw e
    throw new ServerProblem(
      500,
      'database',
      `castwright.db in ${folder}: found ${(e as Error).message}; allowed: a database this program made, in a folder that can be written`
    )
  }
}

function migrate(db: Db, folder: string, now: () => Date): string | null {
  const version = (db.prepare('PRAGMA user_version').get() as { user_version: number }).user_version
  if (version > MIGRATIONS.length)
    throw new ServerProblem(
      500,
      'newer',
      `castwright.db in ${folder}: found schema ${version}; allowed: up to ${MIGRATIONS.length}; a newer Castwright wrote it`
    )
  let backup = newestBackup(folder)
  if (version === MIGRATIONS.length) return backup
  if (version > 0) {
    backup = now().toISOString()
    const to = join(backupFolder(folder), `schema-${version}-${backup.replaceAll(':', '.')}.db`)
    mkdirSync(backupFolder(folder), { recursive: true, mode: 0o700 })
    db.prepare('VACUUM INTO ?').run(to)
    for (const old of backups(folder).slice(0, -MOST_BACKUPS)) rmSync(join(backupFolder(folder), old))
  }
  for (let step = version; step < MIGRATIONS.length; step++) {
    db.exec('BEGIN IMMEDIATE')
    try {
      db.exec(MIGRATIONS[step]!)
      db.exec(`PRAGMA user_version = ${step + 1}`)
      db.exec('COMMIT')
    } catch (e) {
      db.exec('ROLLBACK')
      throw e
    }
  }
  return backup
}

const backupFolder = (folder: string) => join(folder, 'backups')

function backups(folder: string): string[] {
  return existsSync(backupFolder(folder))
    ? readdirSync(backupFolder(folder))
        .filter(f => f.endsWith('.db'))
        .sort()
    : []
}

function newestBackup(folder: string): string | null {
  const last = backups(folder).at(-1)
  return last === undefined
    ? null
    : last
        .replace(/^schema-\d+-/, '')
        .replace(/\.db$/, '')
        .replace(/T(\d\d)\.(\d\d)\./, 'T$1:$2:')
}

const lockPath = (folder: string) => join(folder, 'in-use')

// One server a folder. A lock whose process is gone was left by a kill and is taken over.
function takeLock(folder: string): void {
  const path = lockPath(folder)
  for (let round = 0; round < 2; round++) {
    try {
      writeFileSync(path, String(process.pid), { flag: 'wx', mode: 0o600 })
      return
    } catch (e) {
      if ((e as { code?: string }).code !== 'EEXIST') throw e
      const holder = Number(readFileSync(path, 'utf8'))
      if (holder !== process.pid && alive(holder))
        throw new ServerProblem(
          500,
          'in-use',
          `the data folder ${folder}: found in use by process ${holder}; allowed: one server a folder; stop that one, or give another --data`
        )
      unlinkSync(path)
    }
  }
}

function freeLock(folder: string): void {
  rmSync(lockPath(folder), { force: true })
}

function alive(pid: number): boolean {
  if (!Number.isInteger(pid) || pid <= 0) return false
  try {
    process.kill(pid, 0)
    return true
  } catch (e) {
    return (e as { code?: string }).code === 'EPERM'
  }
}
