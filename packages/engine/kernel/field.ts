// The kernel of the cast in AssemblyScript: WebAssembly with vectors of four numbers of 32 bits.
// Same scheme as src/cast/field/plain-*.ts, which says what it does and is its twin in the tests. Differences:
// rates are reckoned by polynomials, not read from tables, and columns are solved four abreast.
// `node scripts/kernel.mjs` compiles it into src/cast/field/kernel-bytes.ts.

let nx: i32 = 0
let ny: i32 = 0
let nz: i32 = 0
let first: i32 = 0
// addresses of the arrays, in bytes
let T: usize = 0
let PEAK: usize = 0
let GEL: usize = 0
let D0: usize = 0
let D1: usize = 0
let A0: usize = 0
let A1: usize = 0
let CAP: usize = 0
let HEAT: usize = 0
let KB: usize = 0
let KS: usize = 0
let FILM: usize = 0
let RES: usize = 0
let GX: usize = 0
let GY: usize = 0
let GZ: usize = 0
let UP: usize = 0
let RANGE: usize = 0
let TOP: usize = 0
let LAW: usize = 0

/** Numbers of a resin at LAW. */
const LAW_BYTES: usize = 64

/** Arrays lie one after the other from `base`, each `length` numbers long, in the order of the addresses above. */
export function setup(base: usize, length: i32, x: i32, y: i32, z: i32, start: i32): void {
  nx = x
  ny = y
  nz = z
  first = start
  const bytes = <usize>length << 2
  T = base
  PEAK = T + bytes
  GEL = PEAK + bytes
  D0 = GEL + bytes
  D1 = D0 + bytes
  A0 = D1 + bytes
  A1 = A0 + bytes
  CAP = A1 + bytes
  HEAT = CAP + bytes
  KB = HEAT + bytes
  KS = KB + bytes
  FILM = KS + bytes
  RES = FILM + bytes
  GX = RES + bytes
  GY = GX + bytes
  GZ = GY + bytes
  UP = GZ + bytes
  // room for a line of columns, for the ranges of the lines, for the bytes in use of each column (columns of four
  // alike, layers in fours), and for the laws of the resins
  const line = <usize>(max(max(nx, ny), 8) * nz) << 2
  RANGE = UP + 2 * line
  TOP = RANGE + (<usize>(2 * (nx + ny)) << 2)
  LAW = TOP + (<usize>(nx * ny) << 2)
}

export function rangeAt(): usize {
  return RANGE
}
export function lawAt(): usize {
  return LAW
}

// @ts-ignore: decorator
@inline
function splat(at: usize): v128 {
  return v128.load32_splat(at)
}

// @ts-ignore: decorator
@inline
function madd(a: v128, b: v128, c: v128): v128 {
  return f32x4.add(f32x4.mul(a, b), c)
}

/**
 * 2 to the x, |x| < 126: whole part into the exponent (it stands in the low bits once 1.5·2²³ is added), the rest on
 * −½ … ½ by a polynomial of degree 5 (minimax, fitted), relative error below 2e-7.
 */
// @ts-ignore: decorator
@inline
function exp2(x: v128): v128 {
  const shifter = f32x4.splat(12582912.0)
  const t = f32x4.add(x, shifter)
  const r = f32x4.sub(x, f32x4.sub(t, shifter))
  let p = madd(r, f32x4.splat(0.00132765), f32x4.splat(0.00967554))
  p = madd(p, r, f32x4.splat(0.05550713))
  p = madd(p, r, f32x4.splat(0.2402212))
  p = madd(p, r, f32x4.splat(0.69314697))
  p = madd(p, r, f32x4.splat(1.00000007))
  return f32x4.mul(p, i32x4.add(i32x4.shl(t, 23), i32x4.splat(127 << 23)))
}

/**
 * log2 x for x > 1e-37: exponent, and mantissa between √½ and √2 by a polynomial (minimax, fitted) in the square of
 * s = (m − 1)/(m + 1); error below 2e-7.
 */
// @ts-ignore: decorator
@inline
function log2(x: v128): v128 {
  const shifted = i32x4.sub(x, i32x4.splat(0x3f3504f3))
  const e = f32x4.convert_i32x4_s(i32x4.shr_s(shifted, 23))
  const m = i32x4.add(v128.and(shifted, i32x4.splat(0x007fffff)), i32x4.splat(0x3f3504f3))
  const one = f32x4.splat(1.0)
  const s = f32x4.div(f32x4.sub(m, one), f32x4.add(m, one))
  const q = f32x4.mul(s, s)
  let p = madd(q, f32x4.splat(0.59578072), f32x4.splat(0.96158833))
  p = madd(p, q, f32x4.splat(2.88539042))
  return madd(p, s, e)
}

/**
 * Change of conversion of four cells of one resin in a step: one-stage Rosenbrock, both sides of it over the square
 * of the diffusion limit. `t` is half a step ahead.
 */
// @ts-ignore: decorator
@inline
function cure(law: usize, t: v128, u: v128, dt: v128): v128 {
  const one = f32x4.splat(1.0)
  const inverse = f32x4.sub(
    f32x4.splat(1.0 / 298.15),
    f32x4.div(one, f32x4.add(f32x4.max(t, f32x4.splat(-40.0)), f32x4.splat(273.15)))
  )
  const m = load<f32>(law + 16)
  const n = load<f32>(law + 20)
  const left = f32x4.max(f32x4.sub(one, u), f32x4.splat(1e-6))
  const done = f32x4.max(u, f32x4.splat(1e-6))
  // k1·(1 − α)^n and k2·α^m·(1 − α)^n: powers join the exponentials of temperature
  let lead = madd(splat(law + 4), inverse, splat(law))
  let chain = madd(splat(law + 12), inverse, splat(law + 8))
  let first = one
  let second = one
  if (m == 1.0 && n == 2.0) {
    const f = f32x4.mul(left, left)
    first = f32x4.mul(exp2(lead), f)
    second = f32x4.mul(f32x4.mul(exp2(chain), f), done)
  } else {
    const f = f32x4.mul(log2(left), f32x4.splat(n))
    lead = f32x4.add(lead, f)
    chain = f32x4.add(madd(log2(done), f32x4.splat(m), f), chain)
    first = exp2(f32x4.max(lead, f32x4.splat(-120.0)))
    second = exp2(f32x4.max(chain, f32x4.splat(-120.0)))
  }
  const chemical = f32x4.add(first, second)
  // slope of it over α times α·(1 − α); the whole step is brought over that, which leaves a single division
  const both = f32x4.mul(left, done)
  const slope = f32x4.sub(
    f32x4.mul(f32x4.mul(second, f32x4.splat(m)), left),
    f32x4.mul(f32x4.mul(chemical, f32x4.splat(n)), done)
  )
  const h = f32x4.mul(dt, splat(law + 44))
  const halfStep = f32x4.mul(f32x4.splat(0.5), h)
  const width = load<f32>(law + 40)
  let over = f32x4.mul(f32x4.mul(h, chemical), both)
  let under = both
  if (width > 0.0) {
    const rest = f32x4.div(one, f32x4.sub(one, f32x4.mul(splat(law + 32), u)))
    const rises = f32x4.mul(splat(law + 28), rest)
    const above = f32x4.mul(
      f32x4.sub(madd(rises, u, splat(law + 24)), f32x4.add(t, splat(law + 36))),
      splat(law + 52)
    )
    const held = exp2(f32x4.max(f32x4.min(above, f32x4.splat(58.0)), f32x4.splat(-120.0)))
    const limit = f32x4.add(one, held)
    // slope of the limit: held·Tg'/width
    const limitSlope = f32x4.mul(f32x4.mul(held, f32x4.splat(width)), f32x4.mul(rises, rest))
    const growth = f32x4.sub(f32x4.mul(slope, limit), f32x4.mul(f32x4.mul(chemical, both), limitSlope))
    const most = f32x4.mul(both, f32x4.mul(limit, limit))
    over = f32x4.mul(over, limit)
    under = f32x4.max(f32x4.sub(most, f32x4.mul(halfStep, growth)), f32x4.mul(f32x4.splat(0.5), most))
  } else {
    under = f32x4.max(f32x4.sub(both, f32x4.mul(halfStep, slope)), f32x4.mul(f32x4.splat(0.5), both))
  }
  return f32x4.max(f32x4.min(f32x4.div(over, under), f32x4.sub(one, u)), f32x4.splat(0.0))
}

// @ts-ignore: decorator
@inline
function greatest(v: v128): f32 {
  return max(
    max(f32x4.extract_lane(v, 0), f32x4.extract_lane(v, 1)),
    max(f32x4.extract_lane(v, 2), f32x4.extract_lane(v, 3))
  )
}

export function stepZ(
  dt: f32,
  theta: f32,
  ratio: f32,
  ambient: f32,
  time: f32,
  layers: i32,
  resins: i32
): f32 {
  const g = f32x4.splat(theta * dt)
  const dt4 = f32x4.splat(dt)
  const half = f32x4.splat(0.5 * ratio)
  const air = f32x4.splat(ambient)
  const now = f32x4.splat(time)
  const zero = f32x4.splat(0.0)
  const one = f32x4.splat(1.0)
  const row = <usize>nz << 2
  const plane = (<usize>nx * <usize>nz) << 2
  const back = UP + ((<usize>layers) << 4)
  let most = zero
  for (let iy = 0; iy < ny; iy++) {
    const from = load<i32>(RANGE + (<usize>iy << 3))
    const to = load<i32>(RANGE + (<usize>iy << 3) + 4)
    const line = (<usize>first << 2) + <usize>iy * plane
    for (let ix = from; ix < to; ix += 4) {
      const c0 = line + <usize>ix * row
      const bytes = <usize>load<i32>(TOP + (<usize>(iy * nx + ix) << 2))
      // right sides, column by column
      for (let c = c0; c < c0 + 4 * row; c += row) {
        for (let at = c; at < c + bytes; at += 16) {
          const t = v128.load(T + at)
          let right = f32x4.mul(v128.load(GZ + at - 4), f32x4.sub(v128.load(T + at - 4), t))
          right = madd(v128.load(GZ + at), f32x4.sub(v128.load(T + at + 4), t), right)
          right = madd(v128.load(GX + at - row), f32x4.sub(v128.load(T + at - row), t), right)
          right = madd(v128.load(GX + at), f32x4.sub(v128.load(T + at + row), t), right)
          right = madd(v128.load(GY + at - plane), f32x4.sub(v128.load(T + at - plane), t), right)
          right = madd(v128.load(GY + at), f32x4.sub(v128.load(T + at + plane), t), right)
          right = madd(v128.load(FILM + at), f32x4.sub(air, t), right)
          right = f32x4.mul(right, dt4)
          const r = v128.load(RES + at)
          if (v128.any_true(r)) {
            const u = v128.load(A0 + at)
            const ahead = madd(half, v128.load(D0 + at), t)
            const r0 = f32x4.extract_lane(r, 0)
            let change = zero
            let gel = one
            if (i32x4.all_true(f32x4.eq(r, f32x4.splat(r0)))) {
              const law = LAW + <usize>(<i32>r0) * LAW_BYTES
              change = cure(law, ahead, u, dt4)
              gel = splat(law + 48)
            } else {
              for (let k = 1; k <= resins; k++) {
                const mask = f32x4.eq(r, f32x4.splat(<f32>k))
                if (!v128.any_true(mask)) continue
                const law = LAW + <usize>k * LAW_BYTES
                change = v128.bitselect(cure(law, ahead, u, dt4), change, mask)
                gel = v128.bitselect(splat(law + 48), gel, mask)
              }
            }
            const after = f32x4.add(u, change)
            v128.store(A1 + at, after)
            most = f32x4.max(most, change)
            right = madd(v128.load(HEAT + at), change, right)
            const gels = v128.and(f32x4.ge(after, gel), f32x4.lt(u, gel))
            if (v128.any_true(gels)) {
              const when = madd(dt4, f32x4.div(f32x4.sub(gel, u), f32x4.max(change, f32x4.splat(1e-12))), now)
              v128.store(GEL + at, v128.bitselect(when, v128.load(GEL + at), gels))
            }
          }
          v128.store(D1 + at, right)
        }
      }
      // four columns abreast: lanes are columns
      const c1 = c0 + row
      const c2 = c1 + row
      const c3 = c2 + row
      let low = zero
      let a = zero
      let v = zero
      for (let z: usize = 0; z < bytes; z += 16) {
        const gz0 = v128.load(GZ + c0 + z)
        const gz1 = v128.load(GZ + c1 + z)
        const gz2 = v128.load(GZ + c2 + z)
        const gz3 = v128.load(GZ + c3 + z)
        const s0 = madd(g, v128.load(FILM + c0 + z), v128.load(CAP + c0 + z))
        const s1 = madd(g, v128.load(FILM + c1 + z), v128.load(CAP + c1 + z))
        const s2 = madd(g, v128.load(FILM + c2 + z), v128.load(CAP + c2 + z))
        const s3 = madd(g, v128.load(FILM + c3 + z), v128.load(CAP + c3 + z))
        const r0 = v128.load(D1 + c0 + z)
        const r1 = v128.load(D1 + c1 + z)
        const r2 = v128.load(D1 + c2 + z)
        const r3 = v128.load(D1 + c3 + z)
        const ga = v128.shuffle<f32>(gz0, gz1, 0, 4, 1, 5)
        const gb = v128.shuffle<f32>(gz2, gz3, 0, 4, 1, 5)
        const gc = v128.shuffle<f32>(gz0, gz1, 2, 6, 3, 7)
        const gd = v128.shuffle<f32>(gz2, gz3, 2, 6, 3, 7)
        const sa = v128.shuffle<f32>(s0, s1, 0, 4, 1, 5)
        const sb = v128.shuffle<f32>(s2, s3, 0, 4, 1, 5)
        const sc = v128.shuffle<f32>(s0, s1, 2, 6, 3, 7)
        const sd = v128.shuffle<f32>(s2, s3, 2, 6, 3, 7)
        const ra = v128.shuffle<f32>(r0, r1, 0, 4, 1, 5)
        const rb = v128.shuffle<f32>(r2, r3, 0, 4, 1, 5)
        const rc = v128.shuffle<f32>(r0, r1, 2, 6, 3, 7)
        const rd = v128.shuffle<f32>(r2, r3, 2, 6, 3, 7)
        const store = UP + (z << 2)
        const keep = back + (z << 2)
        let up = f32x4.mul(g, v128.shuffle<f32>(ga, gb, 0, 1, 4, 5))
        let base = v128.shuffle<f32>(sa, sb, 0, 1, 4, 5)
        let inv = f32x4.div(one, f32x4.add(f32x4.add(base, up), f32x4.mul(low, f32x4.sub(one, a))))
        a = f32x4.mul(up, inv)
        v = f32x4.mul(madd(low, v, v128.shuffle<f32>(ra, rb, 0, 1, 4, 5)), inv)
        low = up
        v128.store(store, a)
        v128.store(keep, v)
        up = f32x4.mul(g, v128.shuffle<f32>(ga, gb, 2, 3, 6, 7))
        base = v128.shuffle<f32>(sa, sb, 2, 3, 6, 7)
        inv = f32x4.div(one, f32x4.add(f32x4.add(base, up), f32x4.mul(low, f32x4.sub(one, a))))
        a = f32x4.mul(up, inv)
        v = f32x4.mul(madd(low, v, v128.shuffle<f32>(ra, rb, 2, 3, 6, 7)), inv)
        low = up
        v128.store(store + 16, a)
        v128.store(keep + 16, v)
        up = f32x4.mul(g, v128.shuffle<f32>(gc, gd, 0, 1, 4, 5))
        base = v128.shuffle<f32>(sc, sd, 0, 1, 4, 5)
        inv = f32x4.div(one, f32x4.add(f32x4.add(base, up), f32x4.mul(low, f32x4.sub(one, a))))
        a = f32x4.mul(up, inv)
        v = f32x4.mul(madd(low, v, v128.shuffle<f32>(rc, rd, 0, 1, 4, 5)), inv)
        low = up
        v128.store(store + 32, a)
        v128.store(keep + 32, v)
        up = f32x4.mul(g, v128.shuffle<f32>(gc, gd, 2, 3, 6, 7))
        base = v128.shuffle<f32>(sc, sd, 2, 3, 6, 7)
        inv = f32x4.div(one, f32x4.add(f32x4.add(base, up), f32x4.mul(low, f32x4.sub(one, a))))
        a = f32x4.mul(up, inv)
        v = f32x4.mul(madd(low, v, v128.shuffle<f32>(rc, rd, 2, 3, 6, 7)), inv)
        low = up
        v128.store(store + 48, a)
        v128.store(keep + 48, v)
      }
      v = zero
      for (let z: usize = bytes; z > 0; z -= 16) {
        const store = UP + ((z - 16) << 2)
        const keep = back + ((z - 16) << 2)
        const v3 = madd(v128.load(store + 48), v, v128.load(keep + 48))
        const v2 = madd(v128.load(store + 32), v3, v128.load(keep + 32))
        const v1 = madd(v128.load(store + 16), v2, v128.load(keep + 16))
        v = madd(v128.load(store), v1, v128.load(keep))
        const pa = v128.shuffle<f32>(v, v1, 0, 4, 1, 5)
        const pb = v128.shuffle<f32>(v2, v3, 0, 4, 1, 5)
        const pc = v128.shuffle<f32>(v, v1, 2, 6, 3, 7)
        const pd = v128.shuffle<f32>(v2, v3, 2, 6, 3, 7)
        v128.store(D1 + c0 + z - 16, v128.shuffle<f32>(pa, pb, 0, 1, 4, 5))
        v128.store(D1 + c1 + z - 16, v128.shuffle<f32>(pa, pb, 2, 3, 6, 7))
        v128.store(D1 + c2 + z - 16, v128.shuffle<f32>(pc, pd, 0, 1, 4, 5))
        v128.store(D1 + c3 + z - 16, v128.shuffle<f32>(pc, pd, 2, 3, 6, 7))
      }
    }
  }
  return greatest(most)
}

/**
 * Forward half of the sweep of one line of columns, `stride` bytes apart; `start` is the first one, `top` the address
 * of its height in use, `apart` bytes from that of the next. Leaves the upper diagonal at UP, `bytes` a column.
 */
// @ts-ignore: decorator
@inline
function eliminate(
  start: usize,
  stride: usize,
  count: i32,
  top: usize,
  apart: usize,
  G: usize,
  g: v128,
  bytes: usize
): void {
  const one = f32x4.splat(1.0)
  let before: usize = 0
  for (let n = 0; n < count; n++) {
    const c = start + <usize>n * stride
    const up = UP + <usize>n * bytes
    const high = <usize>load<i32>(top + <usize>n * apart)
    const shared = min(high, before)
    let z: usize = 0
    for (; z < shared; z += 16) {
      const at = c + z
      const left = f32x4.mul(g, v128.load(G + at - stride))
      const right = f32x4.mul(g, v128.load(G + at))
      const cap = v128.load(CAP + at)
      const kept = f32x4.sub(one, v128.load(up - bytes + z))
      const inv = f32x4.div(one, f32x4.add(f32x4.add(cap, right), f32x4.mul(left, kept)))
      v128.store(up + z, f32x4.mul(right, inv))
      const value = madd(left, v128.load(D1 + at - stride), f32x4.mul(cap, v128.load(D1 + at)))
      v128.store(D1 + at, f32x4.mul(value, inv))
    }
    // the column before ends lower: nothing comes from there
    for (; z < high; z += 16) {
      const at = c + z
      const right = f32x4.mul(g, v128.load(G + at))
      const cap = v128.load(CAP + at)
      const inv = f32x4.div(one, f32x4.add(cap, right))
      v128.store(up + z, f32x4.mul(right, inv))
      v128.store(D1 + at, f32x4.mul(f32x4.mul(cap, v128.load(D1 + at)), inv))
    }
    before = high
  }
}

export function sweepX(dt: f32, theta: f32, layers: i32): void {
  const g = f32x4.splat(theta * dt)
  const row = <usize>nz << 2
  const plane = (<usize>nx * <usize>nz) << 2
  const bytes = <usize>layers << 2
  for (let iy = 0; iy < ny; iy++) {
    const from = load<i32>(RANGE + (<usize>iy << 3))
    const count = load<i32>(RANGE + (<usize>iy << 3) + 4) - from
    if (count <= 0) continue
    const start = (<usize>first << 2) + <usize>iy * plane + <usize>from * row
    const top = TOP + (<usize>(iy * nx + from) << 2)
    eliminate(start, row, count, top, 4, GX, g, bytes)
    for (let n = count - 2; n >= 0; n--) {
      const c = start + <usize>n * row
      const up = UP + <usize>n * bytes
      const high = min(load<i32>(top + (<usize>n << 2)), load<i32>(top + (<usize>n << 2) + 4))
      for (let z: usize = 0; z < <usize>high; z += 16) {
        const at = c + z
        v128.store(D1 + at, madd(v128.load(up + z), v128.load(D1 + at + row), v128.load(D1 + at)))
      }
    }
  }
}

export function sweepY(dt: f32, theta: f32, ratio: f32, layers: i32): f32 {
  const g = f32x4.splat(theta * dt)
  const ratio4 = f32x4.splat(ratio)
  const row = <usize>nz << 2
  const plane = (<usize>nx * <usize>nz) << 2
  const bytes = <usize>layers << 2
  const ranges = RANGE + (<usize>ny << 3)
  const apart = <usize>nx << 2
  let most = f32x4.splat(0.0)
  for (let ix = 0; ix < nx; ix++) {
    const from = load<i32>(ranges + (<usize>ix << 3))
    const count = load<i32>(ranges + (<usize>ix << 3) + 4) - from
    if (count <= 0) continue
    const start = (<usize>first << 2) + <usize>from * plane + <usize>ix * row
    const top = TOP + (<usize>(from * nx + ix) << 2)
    eliminate(start, plane, count, top, apart, GY, g, bytes)
    let after: usize = 0
    for (let n = count - 1; n >= 0; n--) {
      const c = start + <usize>n * plane
      const up = UP + <usize>n * bytes
      const high = <usize>load<i32>(top + <usize>n * apart)
      const shared = min(high, after)
      let z: usize = 0
      for (; z < shared; z += 16) {
        const at = c + z
        const d = madd(v128.load(up + z), v128.load(D1 + at + plane), v128.load(D1 + at))
        v128.store(D1 + at, d)
        most = f32x4.max(most, f32x4.abs(f32x4.sub(d, f32x4.mul(ratio4, v128.load(D0 + at)))))
      }
      for (; z < high; z += 16) {
        const at = c + z
        const d = v128.load(D1 + at)
        most = f32x4.max(most, f32x4.abs(f32x4.sub(d, f32x4.mul(ratio4, v128.load(D0 + at)))))
      }
      after = high
    }
  }
  return greatest(most)
}

/** Heat that leaves through the films at the increments that stand in the sweep along z now, W. */
export function loss(theta: f32, ambient: f32): f64 {
  const row = <usize>nz << 2
  const theta4 = f32x4.splat(theta)
  const air = f32x4.splat(ambient)
  let sum = f64x2.splat(0.0)
  let c = <usize>first << 2
  for (let column = 0; column < nx * ny; column++) {
    const end = c + <usize>load<i32>(TOP + (<usize>column << 2))
    for (let at = c; at < end; at += 16) {
      const film = v128.load(FILM + at)
      if (!v128.any_true(film)) continue
      const warm = f32x4.sub(madd(theta4, v128.load(D1 + at), v128.load(T + at)), air)
      const flow = f32x4.mul(film, warm)
      sum = f64x2.add(sum, f64x2.promote_low_f32x4(flow))
      sum = f64x2.add(sum, f64x2.promote_low_f32x4(v128.shuffle<f32>(flow, flow, 2, 3, 0, 1)))
    }
    c += row
  }
  return f64x2.extract_lane(sum, 0) + f64x2.extract_lane(sum, 1)
}

/** Makes the tried step the state; afterwards the two buffers of increment and conversion have changed places. */
export function finish(): void {
  const row = <usize>nz << 2
  let c = <usize>first << 2
  for (let column = 0; column < nx * ny; column++) {
    const end = c + <usize>load<i32>(TOP + (<usize>column << 2))
    for (let at = c; at < end; at += 16) {
      const t = f32x4.add(v128.load(T + at), v128.load(D1 + at))
      v128.store(T + at, t)
      v128.store(PEAK + at, f32x4.max(v128.load(PEAK + at), t))
    }
    c += row
  }
  const d = D0
  D0 = D1
  D1 = d
  const a = A0
  A0 = A1
  A1 = a
}

export function hottest(resin: i32, fromLayer: i32, toLayer: i32): f32 {
  const number = f32x4.splat(<f32>resin)
  const row = <usize>nz << 2
  const from = <usize>first << 2
  const end = from + <usize>(nx * ny) * row
  const cold = f32x4.splat(-1000.0)
  let most = cold
  // whole vectors: cells of other resins are told apart by their number
  const low = <usize>(fromLayer & ~3) << 2
  const high = <usize>((toLayer + 3) & ~3) << 2
  for (let c = from; c < end; c += row)
    for (let at = c + low; at < c + high; at += 16)
      most = f32x4.max(
        most,
        v128.bitselect(v128.load(T + at), cold, f32x4.eq(v128.load(RES + at), number))
      )
  return greatest(most)
}

// @ts-ignore: decorator
@inline
function conductivity(at: usize, ahead: v128): v128 {
  const a = v128.load(A0 + at)
  const there = madd(ahead, f32x4.sub(a, v128.load(A1 + at)), a)
  return madd(v128.load(KS + at), there, v128.load(KB + at))
}

// Harmonic mean times two halves; nothing where either side holds nothing.
// @ts-ignore: decorator
@inline
function joined(factor: v128, a: v128, b: v128, under: v128): v128 {
  return f32x4.div(f32x4.mul(factor, f32x4.mul(a, b)), f32x4.max(under, f32x4.splat(1e-20)))
}

/** `heights`: address of the heights of the layers, one more than there are. */
export function conduct(dx: f32, dy: f32, heights: usize, layers: i32, ahead: f32): void {
  const row = <usize>nz << 2
  const plane = (<usize>nx * <usize>nz) << 2
  const bytes = <usize>layers << 2
  const from = <usize>first << 2
  const end = from + <usize>(nx * ny) * row
  const ahead4 = f32x4.splat(ahead)
  const alongX = f32x4.splat((2.0 * dy) / dx)
  const alongY = f32x4.splat((2.0 * dx) / dy)
  const floor = f32x4.splat(2.0 * dx * dy)
  for (let c = from; c < end; c += row) {
    for (let z: usize = 0; z < bytes; z += 16) {
      const at = c + z
      const h = v128.load(heights + z)
      const k = conductivity(at, ahead4)
      const right = conductivity(at + row, ahead4)
      const behind = conductivity(at + plane, ahead4)
      const over = conductivity(at + 4, ahead4)
      v128.store(GX + at, joined(f32x4.mul(alongX, h), k, right, f32x4.add(k, right)))
      v128.store(GY + at, joined(f32x4.mul(alongY, h), k, behind, f32x4.add(k, behind)))
      const under = madd(h, over, f32x4.mul(v128.load(heights + z + 4), k))
      v128.store(GZ + at, joined(floor, k, over, under))
    }
    // the highest layer has nothing above it: the next number belongs to another column
    store<f32>(GZ + c + row - 4, 0.0)
  }
  // nothing is joined across the edge of the plan
  for (let iy = 0; iy < ny; iy++) {
    const last = from + <usize>iy * plane + <usize>(nx - 1) * row
    memory.fill(GX + last, 0, row)
  }
  // how far up anything stands
  for (let column = 0; column < nx * ny; column += 4) {
    let top: usize = 0
    for (let k = 0; k < 4; k++) {
      const c = from + <usize>(column + k) * row
      for (let z = bytes; z > top; z -= 16)
        if (v128.any_true(v128.load(KB + c + z - 16))) {
          top = z
          break
        }
    }
    for (let k = 0; k < 4; k++) store<i32>(TOP + (<usize>(column + k) << 2), <i32>top)
  }
}
