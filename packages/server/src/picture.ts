import { refused } from './problem.ts'

/** What a photo is, read from its own bytes. Sides in px. */
export interface Picture {
  readonly type: 'image/png' | 'image/jpeg' | 'image/webp'
  readonly width: number
  readonly height: number
}

/** Largest side taken, px. */
const MOST_SIDE = 12_000

/**
 * Type and size of a picture by its content: PNG (ISO/IEC 15948: signature, IHDR), JPEG (ISO/IEC 10918-1: SOI, the
 * frame header), WebP (RFC 9649: RIFF, VP8, VP8L, VP8X); all from memory.
 * @throws ServerProblem for anything else, and for sides beyond 12,000 px
 */
export function pictureOf(bytes: Uint8Array): Picture {
  const found = png(bytes) ?? jpeg(bytes) ?? webp(bytes)
  if (found === null)
    throw refused('a photo: found something else by its first bytes; allowed: PNG, JPEG or WebP')
  const { width, height } = found
  if (width < 1 || height < 1 || width > MOST_SIDE || height > MOST_SIDE)
    throw refused(`a photo: found ${width} × ${height} px; allowed: 1 to ${MOST_SIDE} px a side`)
  return found
}

const big16 = (b: Uint8Array, k: number) => (b[k]! << 8) | b[k + 1]!
const big32 = (b: Uint8Array, k: number) =>
  ((b[k]! << 24) | (b[k + 1]! << 16) | (b[k + 2]! << 8) | b[k + 3]!) >>> 0
const words = (b: Uint8Array, k: number, n: number) => String.fromCharCode(...b.subarray(k, k + n))

function png(b: Uint8Array): Picture | null {
  if (b.length < 33 || b[0] !== 0x89 || words(b, 1, 7) !== 'PNG\r\n\u001a\n' || words(b, 12, 4) !== 'IHDR')
    return null
  return { type: 'image/png', width: big32(b, 16), height: big32(b, 20) }
}

function jpeg(b: Uint8Array): Picture | null {
  if (b.length < 20 || b[0] !== 0xff || b[1] !== 0xd8 || b[2] !== 0xff) return null
  let k = 2
  while (k + 9 < b.length) {
    if (b[k] !== 0xff) return null
    const marker = b[k + 1]!
    if (marker === 0xff) {
      k++
      continue
    }
    // SOF0 to SOF15 but for DHT (C4), JPG (C8) and DAC (CC).
    if (marker >= 0xc0 && marker <= 0xcf && marker !== 0xc4 && marker !== 0xc8 && marker !== 0xcc)
      return { type: 'image/jpeg', width: big16(b, k + 7), height: big16(b, k + 5) }
    if (marker === 0xda || marker === 0xd9) return null
    k += 2 + big16(b, k + 2)
  }
  return null
}

function webp(b: Uint8Array): Picture | null {
  if (b.length < 30 || words(b, 0, 4) !== 'RIFF' || words(b, 8, 4) !== 'WEBP') return null
  const chunk = words(b, 12, 4)
  if (chunk === 'VP8X')
    return {
      type: 'image/webp',
      width: 1 + (b[24]! | (b[25]! << 8) | (b[26]! << 16)),
      height: 1 + (b[27]! | (b[28]! << 8) | (b[29]! << 16))
    }
  if (chunk === 'VP8L') {
    if (b[20] !== 0x2f) return null
    const bits = (b[21]! | (b[22]! << 8) | (b[23]! << 16) | (b[24]! << 24)) >>> 0
    return { type: 'image/webp', width: 1 + (bits & 0x3fff), height: 1 + ((bits >>> 14) & 0x3fff) }
  }
  if (chunk !== 'VP8 ' || b[23] !== 0x9d || b[24] !== 0x01 || b[25] !== 0x2a) return null
  return {
    type: 'image/webp',
    width: (b[26]! | (b[27]! << 8)) & 0x3fff,
    height: (b[28]! | (b[29]! << 8)) & 0x3fff
  }
}
