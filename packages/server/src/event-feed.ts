export interface FeedEvent {
  readonly id: number
  readonly name: string
  readonly data: string
}

type Hear = (event: FeedEvent) => void

/** Events kept for those who come back, and those that listen now. */
const MOST_KEPT = 1000
/** Most listeners of one device at once. */
const MOST_LISTENING = 24

/**
 * What changed, in order, to everyone who listens. A listener that was away gets what it missed, if that is known.
 * Numbers begin at the moment of the start, ms: those of a server that ran before are lower, and are known to be old.
 */
export class EventFeed {
  private next: number
  private readonly kept: FeedEvent[] = []
  private readonly listeners = new Map<Hear, string | null>()
  private readonly enders = new Map<Hear, () => void>()

  constructor(startMs: number) {
    this.next = Math.floor(startMs)
  }

  /** Number of the newest event, for a listener that begins now. */
  get newest(): number {
    return this.next - 1
  }

  tell(name: string, data: unknown): void {
    const event = { id: this.next++, name, data: JSON.stringify(data) }
    this.kept.push(event)
    if (this.kept.length > MOST_KEPT) this.kept.shift()
    for (const hear of this.listeners.keys()) hear(event)
  }

  /** What came after `last`; null when that is no longer known and the listener must start over. */
  since(last: number): readonly FeedEvent[] | null {
    if (last >= this.next) return null
    const first = this.kept[0]?.id ?? this.next
    return last + 1 < first ? null : this.kept.filter(e => e.id > last)
  }

  /**
   * Hears every event from now on. A device that listens too often at once (windows left open, a fault that asks again
   * and again) loses the one that has listened longest: it comes back if it is still there.
   */
  listen(hear: Hear, device: string | null, end: () => void): () => void {
    const own = [...this.listeners].filter(([, who]) => who === device)
    for (const [oldest] of own.slice(0, Math.max(0, own.length + 1 - MOST_LISTENING))) {
      const end = this.enders.get(oldest)
      this.listeners.delete(oldest)
      this.enders.delete(oldest)
      end?.()
    }
    this.listeners.set(hear, device)
    this.enders.set(hear, end)
    return () => {
      this.listeners.delete(hear)
      this.enders.delete(hear)
    }
  }

  /** Ends the listening of a device, or of all. */
  end(device?: string): void {
    for (const [hear, who] of [...this.listeners])
      if (device === undefined || who === device) this.enders.get(hear)?.()
  }
}
