import { GAS_CONSTANT } from '../../resin/constant.ts'
import type { FieldKernel, FieldLayout, FieldStep } from './field-kernel.ts'
import type { ResinMaterial } from './field-problem.ts'
import { KERNEL_BASE64 } from './kernel-bytes.ts'

/** What the compiled kernel exports; addresses in bytes (kernel/field.ts). */
interface Exports {
  readonly memory: { readonly buffer: ArrayBuffer; readonly grow: (pages: number) => number }
  readonly setup: (base: number, length: number, nx: number, ny: number, nz: number, first: number) => void
  readonly rangeAt: () => number
  readonly lawAt: () => number
  readonly stepZ: (
    dt: number,
    theta: number,
    ratio: number,
    ambient: number,
    time: number,
    layers: number,
    resins: number
  ) => number
  readonly sweepX: (dt: number, theta: number, layers: number) => void
  readonly sweepY: (dt: number, theta: number, ratio: number, layers: number) => number
  readonly loss: (theta: number, ambient: number) => number
  readonly finish: () => void
  readonly hottest: (resin: number, fromLayer: number, toLayer: number) => number
  readonly conduct: (dx: number, dy: number, heights: number, layers: number, ahead: number) => void
}

/** The part of the JavaScript interface to WebAssembly (W3C) that is used; engines without it have none. */
interface Wasm {
  readonly Module: new (bytes: Uint8Array) => object
  readonly Instance: new (module: object, imports: object) => { readonly exports: unknown }
}

const PAGE = 65_536
/** First byte of the arrays. */
const BASE = 1024
/** Arrays in their order; the same as in kernel/field.ts. */
const ARRAYS = 16
/** Room for the numbers of a resin: LAW_BYTES there. */
const LAW_NUMBERS = 16

let compiled: object | null | undefined

/**
 * The kernel in WebAssembly with vectors, 32 bits; null where the engine has no WebAssembly or no vectors in it, or
 * is not let compile. Temperatures agree with the plain kernel within 0.02 °C (test).
 */
export function wasmKernel(layout: FieldLayout): FieldKernel | null {
  const instance = instanceOf()
  if (instance === null) return null
  const { shape, dxM, dyM, dzM } = layout
  const { nx, ny, nz, first, length } = shape
  const lines = 2 * Math.max(nx, ny, 8) * nz
  // one more height than there are layers, and room for the laws of at most 255 resins
  const heightsAt =
    (4 * ARRAYS * length + 4 * (lines + 2 * (nx + ny) + nx * ny) + 256 * LAW_NUMBERS * 4 + BASE + 15) & ~15
  const bytes = heightsAt + 4 * (nz + 8)
  const { memory } = instance
  const missing = Math.ceil(bytes / PAGE) - memory.buffer.byteLength / PAGE
  if (missing > 0) memory.grow(missing)
  instance.setup(BASE, length, nx, ny, nz, first)
  const { buffer } = memory
  const view = (k: number): Float32Array => new Float32Array(buffer, BASE + 4 * length * k, length)
  const ranges = new Int32Array(buffer, instance.rangeAt(), 2 * (nx + ny))
  for (let iy = 0; iy < ny; iy++) ranges.set([shape.fromX[iy]!, shape.toX[iy]!], 2 * iy)
  for (let ix = 0; ix < nx; ix++) ranges.set([shape.fromY[ix]!, shape.toY[ix]!], 2 * (ny + ix))
  const heights = new Float32Array(buffer, heightsAt, nz + 8).fill(dzM[nz - 1]!)
  heights.set(dzM)
  const peakC = view(1).fill(-1000)
  const capacity = view(7).fill(1)
  let [d0, d1, a0, a1] = [view(3), view(4), view(5), view(6)]
  let resins = 0
  return {
    shape,
    tempC: view(0),
    peakC,
    gelS: view(2),
    capacity,
    heat: view(8),
    kBase: view(9),
    kSlope: view(10),
    film: view(11),
    resin: view(12),
    conductances: { gx: view(13), gy: view(14), gz: view(15) },
    source: null,
    increment: () => d0,
    tried: () => d1,
    conversion: () => a0,
    triedConversion: () => a1,
    setResins: list => {
      resins = list.length
      const laws = new Float32Array(buffer, instance.lawAt(), (resins + 1) * LAW_NUMBERS)
      list.forEach((r, i) => {
        laws.set(lawOf(r), (i + 1) * LAW_NUMBERS)
      })
    },
    conduct: (layers, ahead) => {
      instance.conduct(dxM, dyM, heightsAt, layers, ahead)
    },
    stepZ: (s: FieldStep) => instance.stepZ(s.dtS, s.theta, s.ratio, s.ambientC, s.timeS, s.layers, resins),
    sweepX: s => {
      instance.sweepX(s.dtS, s.theta, s.layers)
    },
    sweepY: s => instance.sweepY(s.dtS, s.theta, s.ratio, s.layers),
    lossW: s => instance.loss(s.theta, s.ambientC),
    finish: () => {
      instance.finish()
      ;[d0, d1, a0, a1] = [d1, d0, a1, a0]
    },
    hottest: (number, from, to) => instance.hottest(number, from, to)
  }
}

/**
 * The numbers of a resin as the kernel reads them: log2 k1 and E1/R·log2 e, log2 k2 and E2/R·log2 e at 25 °C, exponents,
 * glass transition, diffusion limit, factor, gel, log2 e over the limit's width. At most {@link LAW_NUMBERS}.
 */
function lawOf(r: ResinMaterial): number[] {
  if (r.table !== undefined) throw new Error('this kernel takes no tables; the plain one does')
  const { kinetics: k } = r.resin
  const d = k.diffusion
  return [
    Math.log2(k.k2At25PerS * k.k1OverK2At25),
    (k.e1JPerMol / GAS_CONSTANT) * Math.LOG2E,
    Math.log2(k.k2At25PerS),
    (k.e2JPerMol / GAS_CONSTANT) * Math.LOG2E,
    k.m,
    k.n,
    k.tg0C,
    (k.tgInfC - k.tg0C) * k.lambda,
    1 - k.lambda,
    d === null ? 0 : d.offsetK,
    d === null ? 0 : 1 / d.widthK,
    r.rateFactor ?? 1,
    k.gelConversion,
    d === null ? 0 : Math.LOG2E / d.widthK
  ]
}

function instanceOf(): Exports | null {
  const wasm = (globalThis as { readonly WebAssembly?: Wasm }).WebAssembly
  if (wasm === undefined) return null
  if (compiled === undefined) {
    try {
      compiled = new wasm.Module(bytesOf(KERNEL_BASE64))
    } catch {
      // no vectors, or not let compile: the plain kernel does
      compiled = null
    }
  }
  if (compiled === null) return null
  return new wasm.Instance(compiled, { env: { abort: () => undefined } }).exports as Exports
}

const DIGITS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/'

/** Base64 (RFC 4648) to bytes. */
function bytesOf(text: string): Uint8Array {
  const clean = text.replace(/=+$/, '')
  const out = new Uint8Array(Math.floor((clean.length * 3) / 4))
  let bits = 0
  let held = 0
  let at = 0
  for (const digit of clean) {
    held = (held << 6) | DIGITS.indexOf(digit)
    bits += 6
    if (bits < 8) continue
    bits -= 8
    out[at++] = (held >> bits) & 255
  }
  return out
}
