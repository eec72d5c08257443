import { encodedOf } from '../colour/srgb.ts'
import { behindAir, laidOn, seenOutside } from '../colour/stacked.ts'
import type { Face } from '../piece/piece-schema.ts'
import type { CoreInterval } from '../stack/core.ts'
import { HOLLOW_MM, timberSeen } from './core-colour.ts'
import type { Looks } from './looks.ts'

/**
 * Colours of very many cores: what an image of a piece asks for, point after point.
 *
 * A core is written as whole numbers (material and thickness in hundredths of a mm, from the last opaque body on:
 * what lies behind it is not seen) and looked up in a table; only a stack that was not met before is reckoned. A
 * thickness is so off by 0.005 mm at most. Nothing is allocated from one core to the next; the table is cleared when it
 * is full.
 *
 * Check: the colour of core-colour.ts for every core of the examples, within two steps of 255 (test).
 */
export interface ColourKernel {
  /** 0xRRGGBB of a core, low to high, seen from the kernel's face; −1 of nothing. */
  colour(core: readonly CoreInterval[]): number
  /** Cores reckoned since it was made: the rest were looked up. */
  readonly reckoned: number
}

const STEP_MM = 0.01
const SLOTS = 1 << 15
/** Layers of a core at most: pours, fillings and floods a document can hold lie one over the other. */
const DEEPEST = 512
const HOLLOW = 1
const WALL = 2
const TIMBER = 3
const CHAR = 4
const POUR = 5
const MARKING = 6
const KINDS = 8

export function colourKernel(looks: Looks, face: Face): ColourKernel {
  const up = (face === 'front') === looks.frontUp
  const far = looks.faces[up ? 0 : 1]
  // Words of the stack in hand: two a layer.
  const words = new Int32Array(2 * DEEPEST)
  const slotHash = new Int32Array(SLOTS)
  const slotStart = new Int32Array(SLOTS)
  const slotCount = new Int16Array(SLOTS)
  const slotColour = new Int32Array(SLOTS)
  const pool = new Int32Array(SLOTS * 8)
  let pooled = 0
  let met = 0
  let reckoned = 0
  const clear = () => {
    slotCount.fill(0)
    pooled = 0
    met = 0
  }
  const write = (core: readonly CoreInterval[]): number => {
    const n = core.length
    let at = far
    let k = 0
    words[k++] = WALL
    words[k++] = 0
    for (let i = 0; i < n; i++) {
      const part = core[up ? i : n - 1 - i]!
      if (Math.abs((up ? part.from : part.to) - at) > HOLLOW_MM) {
        words[0] = HOLLOW
        words[1] = 0
        k = 2
      }
      at = up ? part.to : part.from
      const { kind, index } = part.material
      if (kind === 'timber') {
        const side = timberSeen(looks, index, at, up) !== looks.timbers[index]!.wood
        words[0] = (side ? CHAR : TIMBER) + KINDS * index
        words[1] = 0
        k = 2
      } else if (kind !== 'former') {
        if (k >= words.length) return -1
        words[k++] = (kind === 'pour' ? POUR : MARKING) + KINDS * index
        words[k++] = Math.round((part.to - part.from) / STEP_MM)
      }
    }
    return k
  }
  const mixOf = (word: number) => {
    const what = word % KINDS
    const index = (word - what) / KINDS
    return what === POUR ? looks.pours[index]! : looks.markings[index]!
  }
  const reckon = (count: number): number => {
    reckoned++
    const first = words[0]!
    const kind = first % KINDS
    const body =
      kind === WALL
        ? looks.wall
        : kind === HOLLOW
          ? looks.hollow
          : kind === CHAR
            ? looks.timbers[(first - kind) / KINDS]!.char!
            : looks.timbers[(first - kind) / KINDS]!.wood
    let turned = 0
    for (let k = 2; k < count; k += 2) {
      const [r, g, b] = mixOf(words[k]!).scatterPerMm
      turned += ((r + g + b) / 3) * words[k + 1]! * STEP_MM
    }
    let colour = 0
    for (let b = 0; b < 3; b++) {
      let r = kind === WALL || kind === HOLLOW ? behindAir(body[b]!, turned) : body[b]!
      for (let k = 2; k < count; k += 2) {
        const mix = mixOf(words[k]!)
        r = laidOn(mix.scatterPerMm[b]!, mix.absorbPerMm[b]!, words[k + 1]! * STEP_MM, r)
      }
      colour = colour * 256 + Math.round(encodedOf(seenOutside(r)))
    }
    return colour
  }
  return {
    colour(core) {
      if (core.length === 0) return -1
      const count = write(core)
      if (count < 0) return -1
      let hash = count
      for (let k = 0; k < count; k++) hash = Math.imul(hash ^ words[k]!, 0x9e3779b1) ^ (hash >>> 15)
      let slot = hash & (SLOTS - 1)
      for (;;) {
        const held = slotCount[slot]!
        if (held === 0) break
        if (held === count && slotHash[slot] === hash) {
          const start = slotStart[slot]!
          let k = 0
          while (k < count && pool[start + k] === words[k]) k++
          if (k === count) return slotColour[slot]!
        }
        slot = (slot + 1) & (SLOTS - 1)
      }
      const colour = reckon(count)
      if (met >= SLOTS / 2 || pooled + count > pool.length) {
        clear()
        slot = hash & (SLOTS - 1)
      }
      for (let k = 0; k < count; k++) pool[pooled + k] = words[k]!
      slotHash[slot] = hash
      slotStart[slot] = pooled
      slotCount[slot] = count
      slotColour[slot] = colour
      pooled += count
      met++
      return colour
    },
    get reckoned() {
      return reckoned
    }
  }
}
