import { existsSync, mkdirSync, readdirSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import Database from 'libsql'
import type { Lock } from './lock.ts'
import { takeLock } from './lock.ts'
import { MIGRATIONS } from './migrations.ts'
import { diskProblem, ServerProblem } from './problem.ts'

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
  let lock: Lock
  try {
    mkdirSync(folder, { recursive: true, mode: 0o700 })
    lock = takeLock(folder)
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
        try {
          db.exec('PRAGMA wal_checkpoint(TRUNCATE)')
        } catch (e) {
          // A disk that does not take it: the log stays, and holds all of it.
          if (diskProblem(e) === null) throw e
        } finally {
          db.close()
          lock.release()
        }
      }
    }
  } catch (e) {
    lock.release()
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
    inOne(db, () => {
      db.exec(MIGRATIONS[step]!)
      db.exec(`PRAGMA user_version = ${step + 1}`)
    })
  }
  return backup
}

/** Runs a change as one transaction: all of it or nothing. */
export function inOne<T>(db: Db, work: () => T): T {
  db.exec('BEGIN IMMEDIATE')
  try {
    const done = work()
    db.exec('COMMIT')
    return done
  } catch (e) {
    try {
      db.exec('ROLLBACK')
    } catch {
      // The database took it back by itself (disk full does).
    }
    throw e
  }
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
