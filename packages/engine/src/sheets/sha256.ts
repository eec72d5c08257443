import { base64 } from './base64.ts'

/**
 * SHA-256 of a text in UTF-8 (FIPS 180-4), as base64: what a content security policy names an inline script or
 * style by. Written out because the engine has neither Node nor the web's own.
 * Check: FIPS 180-4 examples "abc" and the empty message (test).
 */
export function sha256Base64(words: string): string {
  return base64(digest(utf8(words)))
}

/** The same of bytes, as hexadecimal digits: by what a photo is named. */
export function sha256Hex(bytes: Uint8Array): string {
  return digest(bytes)
    .map(x => x.toString(16).padStart(2, '0'))
    .join('')
}

function digest(message: Uint8Array): number[] {
  const length = message.length
  const blocks = Math.ceil((length + 9) / 64)
  const padded = new Uint8Array(64 * blocks)
  padded.set(message)
  padded[length] = 0x80
  const view = new DataView(padded.buffer)
  view.setUint32(padded.length - 8, Math.floor(length / 0x20000000))
  view.setUint32(padded.length - 4, (length << 3) >>> 0)
  const h = Uint32Array.from(START)
  const w = new Uint32Array(64)
  for (let block = 0; block < blocks; block++) {
    for (let t = 0; t < 16; t++) w[t] = view.getUint32(64 * block + 4 * t)
    for (let t = 16; t < 64; t++) {
      const a = w[t - 15]!
      const b = w[t - 2]!
      const s0 = rotated(a, 7) ^ rotated(a, 18) ^ (a >>> 3)
      const s1 = rotated(b, 17) ^ rotated(b, 19) ^ (b >>> 10)
      w[t] = w[t - 16]! + s0 + w[t - 7]! + s1
    }
    let [a, b, c, d, e, f, g, k] = h as unknown as [
      number,
      number,
      number,
      number,
      number,
      number,
      number,
      number
    ]
    for (let t = 0; t < 64; t++) {
      const s1 = rotated(e, 6) ^ rotated(e, 11) ^ rotated(e, 25)
      const t1 = (k + s1 + ((e & f) ^ (~e & g)) + ROUND[t]! + w[t]!) >>> 0
      const s0 = rotated(a, 2) ^ rotated(a, 13) ^ rotated(a, 22)
      const t2 = (s0 + ((a & b) ^ (a & c) ^ (b & c))) >>> 0
      k = g
      g = f
      f = e
      e = (d + t1) >>> 0
      d = c
      c = b
      b = a
      a = (t1 + t2) >>> 0
    }
    ;[a, b, c, d, e, f, g, k].forEach((x, i) => {
      h[i] = h[i]! + x
    })
  }
  return [...h].flatMap(x => [x >>> 24, (x >>> 16) & 255, (x >>> 8) & 255, x & 255])
}

function rotated(x: number, by: number): number {
  return (x >>> by) | (x << (32 - by))
}

function utf8(words: string): Uint8Array {
  const out: number[] = []
  for (const sign of words) {
    const c = sign.codePointAt(0)!
    if (c < 0x80) out.push(c)
    else if (c < 0x800) out.push(0xc0 | (c >> 6), 0x80 | (c & 63))
    else if (c < 0x10000) {
      // Half a pair alone is not text: it is written as the sign for "no such sign", as browsers do.
      const p = c >= 0xd800 && c <= 0xdfff ? 0xfffd : c
      out.push(0xe0 | (p >> 12), 0x80 | ((p >> 6) & 63), 0x80 | (p & 63))
    } else out.push(0xf0 | (c >> 18), 0x80 | ((c >> 12) & 63), 0x80 | ((c >> 6) & 63), 0x80 | (c & 63))
  }
  return Uint8Array.from(out)
}

// Roots of the first 8 and 64 primes, as FIPS 180-4, 4.2.2 and 5.3.3 define them: the first 32 bits of their
// fractions. A double holds 52 bits of a square root below 20, enough for 32; of the cube root likewise.
const PRIMES = primes(64)
const START = PRIMES.slice(0, 8).map(p => fraction(Math.sqrt(p)))
const ROUND = PRIMES.map(p => fraction(Math.cbrt(p)))

function fraction(x: number): number {
  return Math.floor((x - Math.floor(x)) * 0x100000000)
}

function primes(count: number): number[] {
  const out: number[] = []
  for (let n = 2; out.length < count; n++) if (out.every(p => n % p !== 0)) out.push(n)
  return out
}
