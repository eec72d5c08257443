import { setImmediate } from 'node:timers/promises'
import type { Listed, Part } from './archive-form.ts'
import { checksOf, FORM, LIMITS, LIST, sha256 } from './archive-form.ts'
import type { Brought } from './archive-merge.ts'
import { ArchiveMerge } from './archive-merge.ts'
import type { Db } from './database.ts'
import { inOne } from './database.ts'
import { letGo } from './memory.ts'
import type { ReadingEngine } from './parts.ts'
import { pictureOf } from './picture.ts'
import { refused } from './problem.ts'
import type { ZipEntry } from './zip-reader.ts'
import { ZipReader } from './zip-reader.ts'

type Checks = ReturnType<typeof checksOf>

/**
 * Reads an archive from the disk and adds what is not here: nothing of what is here is changed, and either all of it
 * comes in or nothing. All of it is read and checked before the first row is written; then it is read once more.
 * @throws ServerProblem for anything that is not a whole archive of ours; errors of the disk
 */
export async function bringArchive(db: Db, path: string, engine: ReadingEngine): Promise<Brought> {
  const zip = new ZipReader(path, LIMITS)
  try {
    const archive = new Archive(zip, checksOf(await engine()))
    await archive.check()
    return archive.bring(db)
  } finally {
    zip.close()
  }
}

class Archive {
  private readonly zip: ZipReader
  private readonly checks: Checks
  private readonly ids: readonly string[]

  constructor(zip: ZipReader, checks: Checks) {
    this.zip = zip
    this.checks = checks
    this.ids = [...zip.entries.keys()]
      .flatMap(n => /^pieces\/([^/]+)\/piece\.json$/.exec(n)?.[1] ?? [])
      .sort()
  }

  /** Every entry against the list, every item against what it may be, every piece for being whole. */
  async check(): Promise<void> {
    const manifest = this.json(LIST) as { castwrightArchive?: unknown; list?: unknown } | null
    if (manifest?.castwrightArchive !== FORM || !Array.isArray(manifest.list))
      throw refused('the archive: found no list of ours; allowed: one that this program wrote')
    const list = manifest.list as (Listed | null)[]
    if (list.length + 1 !== this.zip.entries.size || new Set(list.map(l => l?.name)).size !== list.length)
      throw refused('the archive: found other entries than its list names')
    for (const l of list) {
      const entry = this.zip.entries.get(String(l?.name))
      if (entry === undefined || entry.bytes !== l!.bytes || sha256(this.zip.read(entry)) !== l!.sha256)
        throw refused('the archive: found an entry that is not as it was written: damaged or changed')
      // The server answers others between two entries.
      await setImmediate()
    }
    const used = new Set([LIST])
    const items = (folder: string, part: Part) => {
      for (const e of this.chunksOf(folder, part)) used.add(e.name)
      return this.walk(folder, part)
    }
    for (const id of this.ids) {
      used.add(`pieces/${id}/piece.json`)
      this.checks.piece(this.json(`pieces/${id}/piece.json`), id)
      consecutive(
        Array.from(items(`pieces/${id}`, 'revisions'), v => this.checks.revision(v, 'revision', true).number)
      )
      for (const v of items(`pieces/${id}`, 'asides')) this.checks.revision(v, 'aside', true)
      for (const v of items(`pieces/${id}`, 'files')) this.checks.file(v)
      for (const v of items(`pieces/${id}`, 'readings')) this.checks.reading(v)
      for (const v of items(`pieces/${id}`, 'photos')) {
        const name = `photos/${id}/${this.checks.photo(v).id}`
        used.add(name)
        letGo(2 * this.photo(name).length, 'now')
      }
      await setImmediate()
    }
    const shop = Array.from(
      items('shop', 'revisions'),
      v => this.checks.revision(v, 'revision', false).number
    )
    if (shop.length > 0) consecutive(shop)
    for (const v of items('shop', 'asides')) this.checks.revision(v, 'aside', false)
    if (used.size !== this.zip.entries.size)
      throw refused('the archive: found an entry that belongs to nothing')
  }

  /** All of it in one transaction. */
  bring(db: Db): Brought {
    const merge = new ArchiveMerge(db)
    return inOne(db, () => {
      for (const id of this.ids) {
        const { away } = this.checks.piece(this.json(`pieces/${id}/piece.json`), id)
        const of = (part: Part) => () => this.walk(`pieces/${id}`, part)
        merge.piece(
          id,
          away,
          () => this.revisions(of('revisions')),
          () => this.revisions(of('asides'))
        )
        for (const v of of('files')()) merge.file(id, this.checks.file(v))
        for (const v of of('readings')()) merge.reading(id, this.checks.reading(v))
        for (const v of of('photos')()) {
          const photo = this.checks.photo(v)
          const bytes = this.photo(`photos/${id}/${photo.id}`)
          merge.photo(id, photo, bytes)
          letGo(2 * bytes.length, 'now')
        }
      }
      const shop = (part: Part) => () => this.walk('shop', part)
      merge.shop(
        () => this.revisions(shop('revisions'), false),
        () => this.revisions(shop('asides'), false)
      )
      return merge.brought
    })
  }

  private *revisions(walk: () => Iterable<unknown>, needsName = true) {
    for (const v of walk())
      yield this.checks.revision(v, 'base' in (v as object) ? 'aside' : 'revision', needsName)
  }

  private *walk(folder: string, part: Part): Generator<unknown> {
    for (const entry of this.chunksOf(folder, part)) yield* this.items(entry)
  }

  private chunksOf(folder: string, part: Part): ZipEntry[] {
    const names = [...this.zip.entries.keys()].filter(n => n.startsWith(`${folder}/${part}-`)).sort()
    return names.map(n => this.zip.entries.get(n)!)
  }

  private items(entry: ZipEntry): unknown[] {
    // What was read before it is not needed by now: its bytes, its text, its values.
    letGo(2 * entry.bytes, 'now')
    const value = this.json(entry.name)
    if (!Array.isArray(value)) throw refused(`the archive: ${entry.name} is no list`)
    return value
  }

  private photo(name: string): Buffer {
    const entry = this.zip.entries.get(name)
    if (entry === undefined) throw refused('the archive: found a photo without its bytes')
    const bytes = this.zip.read(entry)
    pictureOf(bytes)
    if (!name.endsWith(`/${sha256(bytes).slice(0, 24)}`))
      throw refused('the archive: found a photo under the name of another')
    return bytes
  }

  private json(name: string): unknown {
    const entry = this.zip.entries.get(name)
    if (entry === undefined)
      throw refused(`the archive: found no ${name}; allowed: an archive that this program wrote`)
    try {
      return JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(this.zip.read(entry)))
    } catch (e) {
      if (e instanceof SyntaxError || e instanceof TypeError) throw refused(`the archive: ${name} is no JSON`)
      throw e
    }
  }
}

function consecutive(numbers: readonly number[]): void {
  if (numbers.length === 0 || numbers.some((n, i) => n !== i + 1))
    throw refused('the archive: found a document that lacks a revision')
}
