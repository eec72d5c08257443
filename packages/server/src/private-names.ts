import { isIP } from 'node:net'

/**
 * What the authority of a workshop may speak for: names and addresses of a local network, and nothing of the world
 * outside (name constraints, RFC 5280 section 4.2.1.10). Should its key be stolen, it opens no bank to anyone.
 *
 * Names: `local` (RFC 6762), `home.arpa` (RFC 8375), `internal` (reserved by ICANN 2024), `test` and `localhost`
 * (RFC 6761), `lan` (practice). Addresses: RFC 1918, RFC 3927, RFC 6598, RFC 1122 (loopback), RFC 4193, RFC 4291.
 */
const SUFFIXES = ['localhost', 'local', 'lan', 'internal', 'home.arpa', 'test']
const RANGES: readonly (readonly [first: string, bits: number])[] = [
  ['10.0.0.0', 8],
  ['172.16.0.0', 12],
  ['192.168.0.0', 16],
  ['169.254.0.0', 16],
  ['100.64.0.0', 10],
  ['127.0.0.0', 8],
  ['fc00::', 7],
  ['fe80::', 10],
  ['::1', 128]
]

/** Whether a certificate may name it at all: an address of a local network, or any name of this machine. */
export function isPrivate(name: string): boolean {
  const bytes = bytesOf(name)
  if (bytes === null) return true
  return RANGES.some(([first, bits]) => {
    const start = bytesOf(first)!
    return start.length === bytes.length && start.every((b, i) => ((b ^ bytes[i]!) & mask(bits, i)) === 0)
  })
}

/** The subtrees an authority needs for these names beside the usual ones: own names that stand under none of them. */
function subtrees(names: readonly string[]): Buffer[] {
  const own = names.filter(n => isIP(n) === 0 && !SUFFIXES.some(s => n === s || n.endsWith(`.${s}`)))
  return [
    ...[...SUFFIXES, ...own.sort()].map(n => tlv(0x30, tlv(0x82, Buffer.from(n, 'ascii')))),
    ...RANGES.map(([first, bits]) => {
      const start = bytesOf(first)!
      return tlv(0x30, tlv(0x87, Buffer.from([...start, ...start.map((_, i) => mask(bits, i))])))
    })
  ]
}

/** The extension's value, DER: permitted subtrees only (RFC 5280, `NameConstraints`; encoding by X.690). */
export function nameConstraints(names: readonly string[]): Buffer {
  return tlv(0x30, tlv(0xa0, Buffer.concat(subtrees(names))))
}

/** Whether an extension's value permits all of these names. */
export function permits(value: Uint8Array, names: readonly string[]): boolean {
  const der = Buffer.from(value)
  return subtrees(names).every(s => der.includes(s))
}

function mask(bits: number, i: number): number {
  return (0xff00 >> Math.min(8, Math.max(0, bits - 8 * i))) & 0xff
}

function tlv(tag: number, content: Buffer): Buffer {
  const n = content.length
  const length = n < 128 ? [n] : n < 256 ? [0x81, n] : [0x82, n >> 8, n & 255]
  return Buffer.concat([Buffer.from([tag, ...length]), content])
}

/** Bytes of an address; null for a name. */
function bytesOf(address: string): number[] | null {
  const kind = isIP(address)
  if (kind === 4) return address.split('.').map(Number)
  if (kind === 0) return null
  const [head = '', tail] = address.split('::')
  const words = (part: string) => (part === '' ? [] : part.split(':').map(w => Number.parseInt(w, 16)))
  const left = words(head)
  const right = tail === undefined ? [] : words(tail)
  const all = [...left, ...Array<number>(8 - left.length - right.length).fill(0), ...right]
  return all.flatMap(w => [w >> 8, w & 255])
}
