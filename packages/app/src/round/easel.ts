import type { RoundModel } from '../../../engine/src/round/round-model.ts'
import type { Shown } from './aim.ts'
import type { Colours } from './colours.ts'
import { element } from './controls.ts'
import { Painter } from './painter.ts'

/** Canvas pixels a CSS pixel while something moves, and once it rests; and the most of them in all. */
const RATIO = { moving: 1, rest: 2 } as const
const MOST_PIXELS = 5e6
/** A picture that takes longer than this is made coarser the next time, ms; but no coarser than this. */
const SLOW_MS = 300
const MOST_COARSE = 1.6
/** A card that does not come back within this is asked for another context, ms. */
const LOST_MS = 2500

/**
 * The canvas in a pad and the painter at work on it. A card may take a canvas away (it sleeps, its driver starts
 * anew): what the painter had given it is gone then, so a fresh canvas is set up with a painter of its own.
 */
export class Easel {
  readonly #pad: HTMLElement
  readonly #again: () => void
  readonly #gone: () => void
  #model: RoundModel
  #colours: Colours
  #canvas: HTMLCanvasElement | null = null
  #painter: Painter | null = null
  #ears = new AbortController()
  #wait: ReturnType<typeof setTimeout> | undefined
  #slow = 1
  #measuring = false

  /**
   * `again`: a fresh canvas stands and wants a picture; `gone`: no canvas is to be had any more.
   * @throws Error when the browser draws no bodies
   */
  constructor(pad: HTMLElement, model: RoundModel, colours: Colours, again: () => void, gone: () => void) {
    this.#pad = pad
    this.#model = model
    this.#colours = colours
    this.#again = again
    this.#gone = gone
    this.#setUp()
  }

  update(model: RoundModel): void {
    this.#model = model
    this.#painter?.update(model)
  }

  set colours(colours: Colours) {
    this.#colours = colours
    if (this.#painter !== null) this.#painter.colours = colours
  }

  paint(shown: Shown, pace: 'moving' | 'rest'): void {
    const { clientWidth: width, clientHeight: height } = this.#pad
    const painter = this.#painter
    if (painter === null || width === 0 || height === 0) return
    const most = Math.sqrt(MOST_PIXELS / (width * height))
    painter.paint(shown, width, height, Math.min(most, RATIO[pace]) / this.#slow)
    if (this.#measuring) return
    this.#measuring = true
    void painter.took().then(ms => {
      this.#measuring = false
      if (ms > SLOW_MS && this.#slow < MOST_COARSE) this.#slow *= 1.25
    })
  }

  dispose(): void {
    this.#lay()?.dispose()
  }

  #setUp(): void {
    const canvas = element('canvas', { 'aria-hidden': 'true' })
    this.#ears = new AbortController()
    const { signal } = this.#ears
    // Heard before the painter's own: it must not build up again what is about to be left.
    canvas.addEventListener(
      'webglcontextrestored',
      e => {
        e.stopImmediatePropagation()
        this.#replace()
      },
      { signal }
    )
    canvas.addEventListener(
      'webglcontextlost',
      e => {
        e.preventDefault()
        this.#wait = setTimeout(() => this.#replace(), LOST_MS)
      },
      { signal }
    )
    try {
      this.#painter = new Painter(canvas, this.#model, this.#colours)
    } catch (e) {
      this.#ears.abort()
      throw e
    }
    this.#canvas = canvas
    this.#pad.append(canvas)
  }

  #replace(): void {
    this.#lay()?.abandon()
    try {
      this.#setUp()
    } catch {
      this.#gone()
      return
    }
    this.#again()
  }

  // Takes the canvas down; returns the painter that is left over.
  #lay(): Painter | null {
    clearTimeout(this.#wait)
    this.#ears.abort()
    this.#canvas?.remove()
    this.#canvas = null
    const painter = this.#painter
    this.#painter = null
    return painter
  }
}
