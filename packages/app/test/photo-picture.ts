import { crc32, deflateSync } from 'node:zlib'

export type Place = readonly [number, number]
type V = readonly [number, number, number]

/** A camera over the bench: sides of its picture, px, and both ways between bench (mm) and picture (px). */
export interface Camera {
  readonly widthPx: number
  readonly heightPx: number
  see(x: number, y: number): Place
  lies(u: number, v: number): Place
}

/**
 * A pinhole camera (textbook): what lies along its axis divides what lies across; the way back meets the ray with the
 * bench z = 0. Shares no code with the engine: no homography is formed.
 */
export function camera(
  eye: V,
  look: Place,
  focalPx: number,
  [widthPx, heightPx]: readonly [number, number]
): Camera {
  const ahead = unit([look[0] - eye[0], look[1] - eye[1], -eye[2]])
  const right = unit(cross(ahead, [0.05, 1, 0]))
  const up = cross(right, ahead)
  return {
    widthPx,
    heightPx,
    see: (x, y) => {
      const ray: V = [x - eye[0], y - eye[1], -eye[2]]
      const depth = dot(ray, ahead)
      return [
        widthPx / 2 + (focalPx * dot(ray, right)) / depth,
        heightPx / 2 - (focalPx * dot(ray, up)) / depth
      ]
    },
    lies: (u, v) => {
      const [a, b] = [(u - widthPx / 2) / focalPx, (heightPx / 2 - v) / focalPx]
      const ray = [0, 1, 2].map(k => ahead[k]! + a * right[k]! + b * up[k]!) as unknown as V
      const t = -eye[2] / ray[2]
      return [eye[0] + t * ray[0], eye[1] + t * ray[1]]
    }
  }
}

/** A closed edge of wood about a middle: r(θ) = radius + Σ size·cos(times·θ − phase), mm. */
export interface Edge {
  readonly middle: Place
  readonly radius: number
  readonly waves: readonly { readonly size: number; readonly times: number; readonly phase: number }[]
}

function edgeRadius(e: Edge, angle: number): number {
  return e.waves.reduce((r, k) => r + k.size * Math.cos(k.times * angle - k.phase), e.radius)
}

export function edgePlace(e: Edge, angle: number): Place {
  const r = edgeRadius(e, angle)
  return [e.middle[0] + r * Math.cos(angle), e.middle[1] + r * Math.sin(angle)]
}

/** Distance of a place from the edge, mm: the least over places of it 0.05° apart. Slow and obvious. */
export function edgeDistance(e: Edge, [x, y]: Place): number {
  let least = Number.POSITIVE_INFINITY
  for (let k = 0; k < 7200; k++) {
    const [a, b] = edgePlace(e, (k * Math.PI) / 3600)
    least = Math.min(least, Math.hypot(a - x, b - y))
  }
  return least
}

/** Levels of grey of what lies on the bench, and how far the grain of the picture strays from them. */
const BENCH = 70
const WOOD = 168
const PAPER = 236
const GRAIN = 5
/** Places looked at in a px, each way, where more than one thing is seen in it. */
const FINE = 8

/** What the camera sees of a sheet of paper (0, 0) to `sheet` and of wood, as a PNG in grey. Made from chance `seed`. */
export function benchPng(c: Camera, sheet: Place, wood: Edge, seed: number): Buffer {
  const level = (u: number, v: number): number => {
    const [x, y] = c.lies(u, v)
    if (x >= 0 && y >= 0 && x <= sheet[0] && y <= sheet[1]) return PAPER
    const [dx, dy] = [x - wood.middle[0], y - wood.middle[1]]
    return Math.hypot(dx, dy) < edgeRadius(wood, Math.atan2(dy, dx)) ? WOOD : BENCH
  }
  const [w, h] = [c.widthPx, c.heightPx]
  const corners = new Uint8Array((w + 1) * (h + 1))
  for (let j = 0; j <= h; j++) for (let i = 0; i <= w; i++) corners[j * (w + 1) + i] = level(i, j)
  let state = seed
  const grain = () => {
    // Numerical Recipes' quick generator (memory): good enough for grain.
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0
    return (state / 2 ** 32 - 0.5) * 2 * GRAIN
  }
  const rows = Buffer.alloc(h * (w + 1))
  for (let j = 0; j < h; j++)
    for (let i = 0; i < w; i++) {
      const k = j * (w + 1) + i
      let grey = corners[k]!
      if (grey !== corners[k + 1] || grey !== corners[k + w + 1] || grey !== corners[k + w + 2]) {
        grey = 0
        for (let b = 0; b < FINE; b++)
          for (let a = 0; a < FINE; a++) grey += level(i + (a + 0.5) / FINE, j + (b + 0.5) / FINE)
        grey /= FINE * FINE
      }
      rows[j * (w + 1) + 1 + i] = Math.min(255, Math.max(0, Math.round(grey + grain())))
    }
  return png(w, h, rows)
}

// PNG (ISO/IEC 15948; memory): signature, IHDR with 8 bits of grey, IDAT of rows that begin with filter 0, IEND.
function png(width: number, height: number, rows: Buffer): Buffer {
  const head = Buffer.alloc(13)
  head.writeUInt32BE(width, 0)
  head.writeUInt32BE(height, 4)
  head[8] = 8
  const chunk = (name: string, data: Buffer): Buffer => {
    const body = Buffer.concat([Buffer.from(name, 'latin1'), data])
    const out = Buffer.alloc(body.length + 8)
    out.writeUInt32BE(data.length, 0)
    body.copy(out, 4)
    out.writeUInt32BE(crc32(body), body.length + 4)
    return out
  }
  return Buffer.concat([
    Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]),
    chunk('IHDR', head),
    chunk('IDAT', deflateSync(rows)),
    chunk('IEND', Buffer.alloc(0))
  ])
}

function dot(a: V, b: V): number {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
}

function cross(a: V, b: V): V {
  return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]]
}

function unit(a: V): V {
  const n = Math.sqrt(dot(a, a))
  return [a[0] / n, a[1] / n, a[2] / n]
}
