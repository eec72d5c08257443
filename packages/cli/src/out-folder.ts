import {
  closeSync,
  existsSync,
  fsyncSync,
  lstatSync,
  mkdirSync,
  openSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  writeSync
} from 'node:fs'
import { dirname, join, resolve } from 'node:path'
import { diskWords, Failure } from './failure.ts'

/** Names of the files this wrote into a folder: what a later run may replace or take away. */
const LIST = '.castwright.json'
/** Where the new files wait, and the old ones until all the new ones are in place. */
const WAITING = '.castwright-part'

/** A set of files of a folder, by name. */
export type OutFiles = ReadonlyMap<string, string | Uint8Array>

/**
 * Writes a set of files into a folder: all of them or none. Files an earlier run wrote are replaced, and taken
 * away when they are not of the set; files of others are never touched. Everything is written and flushed
 * beside its place first; then old files move out and new ones in; when one move fails all are moved back.
 * A run that was killed between two moves is put right by the next.
 *
 * With `beside` the set joins what an earlier run wrote: only files of the same names are replaced, none is taken away.
 * @returns names in the order given
 * @throws Failure when the folder cannot be used, or a file that is not ours has one of our names
 */
export function writeFolder(folder: string, files: OutFiles, beside = false): readonly string[] {
  const made = makeFolder(folder)
  const waiting = join(folder, WAITING)
  try {
    putRight(folder)
    const ours = listed(folder)
    for (const name of files.keys()) {
      if (!ours.has(name) && there(join(folder, name)))
        throw new Failure(
          `${join(folder, name)}: found a file that castwright did not write; allowed: a folder without it, or the file moved away`
        )
    }
    // One by one, as above: /proc is there, and takes no folder.
    mkdirSync(waiting)
    mkdirSync(join(waiting, 'new'))
    mkdirSync(join(waiting, 'old'))
    for (const [name, content] of files) write(join(waiting, 'new', name), content)
    const fresh = [...files.keys()]
    const kept = beside ? [...ours].filter(name => !files.has(name)) : []
    // `fresh` says which of them are of this run, for the next one to put right should this not come to its end.
    write(
      join(waiting, 'new', LIST),
      `${JSON.stringify({ castwright: 1, files: [...kept, ...fresh], ...(beside ? { fresh } : {}) }, null, 2)}\n`
    )
    exchange(
      folder,
      [...ours].filter(name => !kept.includes(name)),
      fresh
    )
    rmSync(waiting, { recursive: true, force: true })
  } catch (e) {
    attempt(() => putRight(folder))
    if (made !== undefined) attempt(() => rmSync(made, { recursive: true, force: true }))
    if (e instanceof Failure) throw e
    throw new Failure(
      `${folder}: found ${diskWords(e)}; allowed: a folder that can be written to. Nothing was written`
    )
  }
  return [...files.keys()]
}

// Made from the first missing one down, one by one: making all at once does not end where none can be made (/proc).
function makeFolder(folder: string): string | undefined {
  const missing: string[] = []
  try {
    let at = resolve(folder)
    while (!there(at) && dirname(at) !== at) {
      missing.unshift(at)
      at = dirname(at)
    }
    if (!existsSync(at)) throw new Failure(`${folder}: found a link to nothing; allowed: a folder`)
    if (!statSync(at).isDirectory())
      throw new Failure(
        missing.length === 0
          ? `${folder}: found a file; allowed: a folder`
          : `${folder}: found a file, not a folder, on the way to it; allowed: a folder`
      )
    for (const path of missing) mkdirSync(path)
    return missing[0]
  } catch (e) {
    if (e instanceof Failure) throw e
    throw new Failure(`${folder}: found ${diskWords(e)}; allowed: a folder that can be written to`)
  }
}

/** Moves the old files out and the new ones in; the list goes last. @throws what a failed move throws */
function exchange(folder: string, old: readonly string[], fresh: readonly string[]): void {
  const place = (name: string) => join(folder, name)
  const was = (name: string) => join(folder, WAITING, 'old', name)
  const next = (name: string) => join(folder, WAITING, 'new', name)
  for (const name of [...old, LIST]) if (there(place(name))) renameSync(place(name), was(name))
  for (const name of [...fresh, LIST]) renameSync(next(name), place(name))
}

/**
 * Undoes a run that did not come to its end: new files out, old files back. The new list is written last and
 * moved last: while it waits, the run is not done; every new file that does not wait with it has been moved.
 */
function putRight(folder: string): void {
  const waiting = join(folder, WAITING)
  if (!there(waiting)) return
  const fresh = join(waiting, 'new')
  const old = join(waiting, 'old')
  if (there(join(fresh, LIST))) {
    const list = join(fresh, LIST)
    for (const name of namesIn(list, 'fresh') ?? namesIn(list) ?? [])
      if (!there(join(fresh, name))) rmSync(join(folder, name), { force: true })
    for (const name of readdirSync(old)) renameSync(join(old, name), join(folder, name))
  }
  rmSync(waiting, { recursive: true, force: true })
}

function listed(folder: string): Set<string> {
  const path = join(folder, LIST)
  return new Set((there(path) ? namesIn(path) : null) ?? [])
}

// Only plain names count: a list that was tampered with must not reach outside its folder.
function namesIn(path: string, key: 'files' | 'fresh' = 'files'): string[] | null {
  try {
    const names = (JSON.parse(readFileSync(path, 'utf8')) as Record<string, unknown>)[key]
    if (!Array.isArray(names)) return null
    return names.filter(
      (n): n is string => typeof n === 'string' && /^[A-Za-z0-9][A-Za-z0-9._-]{0,99}$/.test(n)
    )
  } catch {
    return null
  }
}

function write(path: string, content: string | Uint8Array): void {
  const bytes = typeof content === 'string' ? Buffer.from(content, 'utf8') : content
  const handle = openSync(path, 'wx')
  try {
    let done = 0
    while (done < bytes.length) done += writeSync(handle, bytes, done)
    fsyncSync(handle)
  } finally {
    closeSync(handle)
  }
}

function there(path: string): boolean {
  try {
    lstatSync(path)
    return true
  } catch (e) {
    if ((e as { code?: unknown }).code === 'ENOENT') return false
    throw e
  }
}

function attempt(work: () => void): void {
  try {
    work()
  } catch {
    // The first failure is the one to tell; the waiting files stay for the next run to put right.
  }
}
