import { readFileSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import Database from 'libsql'
import { ServerProblem } from './problem.ts'

/** A data folder held for this process. */
export interface Lock {
  release(): void
}

/**
 * Holds a data folder for this process. The lock is one of the operating system's, taken by SQLite on an empty
 * database of its own: it ends with the process however that ends, so that nothing stale is ever left, and a number
 * of a process that was given anew misleads nobody. The number beside it is for people.
 * @throws ServerProblem when another server has the folder; errors of the disk
 */
export function takeLock(folder: string): Lock {
  const note = join(folder, 'in-use')
  const db = new Database(join(folder, 'lock.db'), { timeout: 0 })
  try {
    db.exec('PRAGMA busy_timeout = 0; BEGIN EXCLUSIVE')
    writeFileSync(note, String(process.pid), { mode: 0o600 })
  } catch (e) {
    db.close()
    if (!/SQLITE_BUSY|locked/.test(`${(e as { code?: string }).code} ${(e as Error).message}`)) throw e
    throw new ServerProblem(
      500,
      'in-use',
      `the data folder ${folder}: found in use by process ${holder(note)}; allowed: one server a folder; stop that one, or give another --data`
    )
  }
  return {
    release: () => {
      rmSync(note, { force: true })
      db.exec('ROLLBACK')
      db.close()
    }
  }
}

function holder(note: string): string {
  try {
    return /^\d{1,10}$/.exec(readFileSync(note, 'utf8'))?.[0] ?? 'another'
  } catch {
    return 'another'
  }
}
