const SIGNS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/'

/** Bytes as base64 (RFC 4648, section 4). */
export function base64(bytes: ArrayLike<number>): string {
  let out = ''
  for (let k = 0; k < bytes.length; k += 3) {
    const [a, b, c] = [bytes[k]!, bytes[k + 1], bytes[k + 2]]
    out += SIGNS[a >> 2]! + SIGNS[((a & 3) << 4) | ((b ?? 0) >> 4)]!
    out += b === undefined ? '=' : SIGNS[((b & 15) << 2) | ((c ?? 0) >> 6)]!
    out += c === undefined ? '=' : SIGNS[c & 63]!
  }
  return out
}
