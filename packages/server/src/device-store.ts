import { createHash, randomBytes, randomInt, timingSafeEqual } from 'node:crypto'
import type { Db } from './database.ts'
import { PAIRING_WORDS } from './pairing-words.ts'
import { diskProblem, ServerProblem } from './problem.ts'

export interface Device {
  readonly id: string
  readonly name: string
  readonly desk: boolean
}

export interface DeviceRow {
  readonly id: string
  readonly name: string
  readonly paired: string
  readonly seen: string
}

/** A pairing lives this long; so many wrong tries end it; so many tries a minute are taken from one address. */
const LIVES_MS = 5 * 60_000
const MOST_WRONG = 20
const MOST_A_MINUTE = 5
/** Words of a pairing: three of 1024 are 30 bits, against at most 20 tries. */
const WORDS = 3

const digest = (secret: string) => createHash('sha256').update(secret).digest('hex')
const same = (a: string, b: string) =>
  a.length === b.length && timingSafeEqual(Buffer.from(a), Buffer.from(b))

interface Pairing {
  readonly token: string
  readonly words: string
  readonly expires: number
  wrong: number
}

/** Devices and their sessions, and the one pairing that may be open. Secrets are kept as their hashes. */
export class DeviceStore {
  readonly db: Db
  private pairing: Pairing | null = null
  private readonly tries = new Map<string, number[]>()

  constructor(db: Db) {
    this.db = db
  }

  /** The device of a session cookie; null for none or one that was revoked. */
  of(token: string, moment: string): Device | null {
    const row = this.db.prepare('SELECT id, name, seen FROM device WHERE token = ?').get(digest(token)) as
      | { id: string; name: string; seen: string }
      | undefined
    if (row === undefined) return null
    // Written once a minute at most: a look is no reason for a write.
    if (Date.parse(moment) - Date.parse(row.seen) > 60_000)
      try {
        this.db.prepare('UPDATE device SET seen = ? WHERE id = ?').run(moment, row.id)
      } catch (e) {
        // Reading goes on where nothing can be written: when it was seen is worth no refusal.
        if (diskProblem(e) === null) throw e
      }
    return { id: row.id, name: row.name, desk: false }
  }

  list(): DeviceRow[] {
    return this.db.prepare('SELECT id, name, paired, seen FROM device ORDER BY paired').all() as DeviceRow[]
  }

  revoke(id: string): void {
    const { changes } = this.db.prepare('DELETE FROM device WHERE id = ?').run(id)
    if (changes === 0) throw new ServerProblem(404, 'no-such-device', `no device ${id} is paired`)
  }

  /** Opens a pairing; one that was open before is void. */
  open(nowMs: number): { readonly token: string; readonly words: string; readonly expires: string } {
    const words = Array.from({ length: WORDS }, () => PAIRING_WORDS[randomInt(PAIRING_WORDS.length)]!).join(
      ' '
    )
    const token = randomBytes(16).toString('base64url')
    this.pairing = { token: digest(token), words: digest(words), expires: nowMs + LIVES_MS, wrong: 0 }
    return { token, words, expires: new Date(this.pairing.expires).toISOString() }
  }

  /**
   * Pairs a device by the token of the code or by its words; the session's secret.
   * @throws ServerProblem 429 when too often tried, 403 when wrong, used or too late
   */
  pair(
    by: { token?: unknown; words?: unknown },
    name: string,
    address: string,
    now: Date
  ): { secret: string; device: Device } {
    this.count(address, now.getTime())
    const open = this.pairing
    if (open === null || now.getTime() > open.expires)
      throw new ServerProblem(
        403,
        'no-pairing',
        'no pairing is open: found none or one that is over; ask for a new one at the desk'
      )
    const token = typeof by.token === 'string' && same(digest(by.token), open.token)
    const words =
      typeof by.words === 'string' &&
      same(
        digest(
          by.words
            .trim()
            .toLowerCase()
            .split(/[\s-]+/)
            .join(' ')
        ),
        open.words
      )
    if (!token && !words) {
      if (++open.wrong >= MOST_WRONG) this.pairing = null
      throw new ServerProblem(
        403,
        'wrong-words',
        'these are not the words shown at the desk; allowed: the three words as they stand there'
      )
    }
    this.pairing = null
    const secret = randomBytes(32).toString('base64url')
    const id = randomBytes(8).toString('hex')
    const shown = name.trim().slice(0, 60) || 'a device'
    this.db
      .prepare('INSERT INTO device (id, name, token, paired, seen) VALUES (?, ?, ?, ?, ?)')
      .run(id, shown, digest(secret), now.toISOString(), now.toISOString())
    return { secret, device: { id, name: shown, desk: false } }
  }

  private count(address: string, nowMs: number): void {
    const recent = (this.tries.get(address) ?? []).filter(t => nowMs - t < 60_000)
    if (recent.length >= MOST_A_MINUTE)
      throw new ServerProblem(
        429,
        'too-often',
        `tried ${recent.length} times in a minute; allowed: ${MOST_A_MINUTE}; wait a minute`
      )
    this.tries.set(address, [...recent, nowMs])
    if (this.tries.size > 1000) this.tries.clear()
  }
}
