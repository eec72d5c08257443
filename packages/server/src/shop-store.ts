import type { Db } from './database.ts'
import { inOne } from './database.ts'
import type { AsideRow } from './piece-store.ts'
import { asideOf } from './piece-store.ts'
import { ServerProblem } from './problem.ts'

export type SavedShop =
  | { readonly kind: 'saved'; readonly revision: number; readonly saved: string; readonly again: boolean }
  | {
      readonly kind: 'clash'
      readonly revision: number
      /** Null when the shop was never said. */
      readonly text: string | null
      /** The device that saved it; null for one without a name. */
      readonly device: string | null
      readonly aside: AsideRow
    }

/** The shop, with every revision of it. */
export class ShopStore {
  readonly db: Db

  constructor(db: Db) {
    this.db = db
  }

  newest(): { revision: number; text: string | null; device: string | null } {
    const row = this.db
      .prepare('SELECT number, document, device FROM shop ORDER BY number DESC LIMIT 1')
      .get() as { number: number; document: string; device: string | null } | undefined
    return row === undefined
      ? { revision: 0, text: null, device: null }
      : { revision: row.number, text: row.document, device: row.device }
  }

  /** What was changed on an older revision and is not settled. */
  asides(): AsideRow[] {
    return this.db
      .prepare('SELECT number, base, saved, device FROM shop_aside WHERE settled = 0 ORDER BY number')
      .all() as AsideRow[]
  }

  /** @throws ServerProblem 404 */
  aside(number: number): string {
    const row = this.db.prepare('SELECT document FROM shop_aside WHERE number = ?').get(number) as
      | { document: string }
      | undefined
    if (row === undefined)
      throw new ServerProblem(404, 'no-such-aside', `nothing ${number} kept aside of the shop`)
    return row.document
  }

  settleAside(number: number): void {
    this.aside(number)
    this.db.prepare('UPDATE shop_aside SET settled = 1 WHERE number = ?').run(number)
  }

  /** Saves the shop when it was changed on its newest revision; else keeps it aside and says which one that is. */
  save(base: number, edit: string, text: string, device: string | null, saved: string): SavedShop {
    return inOne(this.db, (): SavedShop => {
      const again = this.db.prepare('SELECT number, saved FROM shop WHERE edit = ?').get(edit) as
        | { number: number; saved: string }
        | undefined
      if (again !== undefined)
        return { kind: 'saved', revision: again.number, saved: again.saved, again: true }
      const newest = this.newest()
      if (newest.revision !== base)
        return {
          kind: 'clash',
          revision: newest.revision,
          text: newest.text,
          device: newest.device,
          aside: this.keepAside(base, edit, text, device, saved)
        }
      this.db
        .prepare('INSERT INTO shop (number, edit, document, device, saved) VALUES (?, ?, ?, ?, ?)')
        .run(base + 1, edit, text, device, saved)
      return { kind: 'saved', revision: base + 1, saved, again: false }
    })
  }

  private keepAside(
    base: number,
    edit: string,
    text: string,
    device: string | null,
    saved: string
  ): AsideRow {
    const find = this.db.prepare('SELECT number, base, saved, device FROM shop_aside WHERE edit = ?')
    const known = find.get(edit) as AsideRow | undefined
    if (known !== undefined) return asideOf(known)
    this.db
      .prepare('INSERT INTO shop_aside (edit, base, document, device, saved) VALUES (?, ?, ?, ?, ?)')
      .run(edit, base, text, device, saved)
    return asideOf(find.get(edit) as AsideRow)
  }
}
