import type { IncomingMessage } from 'node:http'
import type { OpenFolder } from './database.ts'
import type { Device, DeviceStore } from './device-store.ts'
import type { EventFeed } from './event-feed.ts'
import type { PieceStore } from './piece-store.ts'
import type { ShopStore } from './shop-store.ts'

/** What hono carries along with a request. */
export interface Env {
  readonly Bindings: { readonly incoming?: IncomingMessage }
  readonly Variables: { device: Device | null }
}

/** The engine that readings are checked by, asked for at the first one: a server that idles stays small. */
export type ReadingEngine = () => Promise<
  Pick<typeof import('@castwright/engine'), 'InputProblem' | 'readReadings'>
>

/** What the parts of the api work with. */
export interface Parts {
  readonly open: OpenFolder
  readonly pieces: PieceStore
  readonly shop: ShopStore
  readonly devices: DeviceStore
  readonly feed: EventFeed
  readonly now: () => Date
  readonly engine: ReadingEngine
  readonly version: string
  readonly https: boolean
  readonly lan: boolean
  /** Addresses the app is reached at, best for a phone first. */
  readonly urls: () => readonly string[]
}
