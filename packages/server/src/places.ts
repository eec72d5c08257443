import { hostname, networkInterfaces } from 'node:os'
import { hostsOf } from './guard.ts'

/** IPv4 addresses of this machine in its local networks. */
export function localAddresses(): string[] {
  return Object.values(networkInterfaces()).flatMap(list =>
    (list ?? []).filter(a => a.family === 'IPv4' && !a.internal).map(a => a.address)
  )
}

/** The names and addresses a server goes by. They change when the machine is carried to another network. */
export class Places {
  /** Names of this machine, for a certificate. */
  names: readonly string[] = []
  /** What a request may name as its host. The same set throughout: whoever holds it sees the changes. */
  readonly hosts = new Set<string>()
  /** Addresses of the app, this machine's own first. */
  urls: readonly string[] = []
  private port: number | null = null
  private readonly lan: boolean
  private readonly https: boolean
  private readonly given: readonly string[]
  private readonly addresses: () => readonly string[]

  constructor(lan: boolean, https: boolean, given: readonly string[], addresses: () => readonly string[]) {
    this.lan = lan
    this.https = https
    this.given = given
    this.addresses = addresses
    this.look()
  }

  /** Addresses for a phone: those of the local network, else this machine's own. */
  get forOthers(): readonly string[] {
    return this.urls.length > 1 ? this.urls.slice(1) : this.urls
  }

  /** Says on which port the server listens. */
  at(port: number): void {
    this.port = port
    this.look()
  }

  /** Looks again which addresses this machine has. */
  look(): void {
    const addresses = this.lan ? this.addresses() : []
    const own = this.lan ? [hostname(), `${hostname()}.local`] : []
    this.names = [...addresses, ...own, ...this.given]
    if (this.port === null) return
    const hosts = hostsOf(this.names, this.port)
    for (const h of this.hosts) if (!hosts.has(h)) this.hosts.delete(h)
    for (const h of hosts) this.hosts.add(h)
    const scheme = this.https ? 'https' : 'http'
    this.urls = ['127.0.0.1', ...addresses].map(a => `${scheme}://${a}:${this.port}`)
  }
}
