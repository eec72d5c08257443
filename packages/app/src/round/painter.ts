import type { LineSegments, RawShaderMaterial } from 'three'
import {
  DepthStencilFormat,
  DepthTexture,
  DoubleSide,
  FloatType,
  HalfFloatType,
  LinearFilter,
  Mesh,
  NearestFilter,
  OrthographicCamera,
  Scene,
  UnsignedByteType,
  UnsignedInt248Type,
  Vector2,
  Vector3,
  WebGLRenderer,
  WebGLRenderTarget
} from 'three'
import type { RoundModel } from '../../../engine/src/round/round-model.ts'
import type { Cut, Shown } from './aim.ts'
import { aim, sharedUniforms } from './aim.ts'
import { cutPlane } from './body-shape.ts'
import type { Colours } from './colours.ts'
import { linear } from './colours.ts'
import type { Drawable, Uniforms } from './drawable.ts'
import { bodyMaterial, drawableOf, inkWith, letGo } from './drawable.ts'
import { MASK_FRAGMENT } from './shaders.ts'
import { sheetMesh, uniformsOf } from './sheet-mesh.ts'
import { SHEET_FRAGMENT, SOFT_FRAGMENT } from './sheet-shaders.ts'

/** Draws a model into a canvas. Nothing moves by itself: a picture is made when it is asked for. */
export class Painter {
  readonly #gl: WebGLRenderer
  readonly #camera = new OrthographicCamera()
  readonly #scene = new Scene()
  readonly #common: Uniforms
  readonly #shown: WebGLRenderTarget
  readonly #sums: WebGLRenderTarget
  readonly #shade: WebGLRenderTarget
  readonly #soft: WebGLRenderTarget
  readonly #sheet: Mesh
  readonly #blur: Mesh
  readonly #mask: RawShaderMaterial
  #model: RoundModel
  #bodies: Drawable[] = []
  #colours: Colours

  /** @throws Error when there is no WebGL 2 or it cannot add up fractions */
  constructor(canvas: HTMLCanvasElement, model: RoundModel, colours: Colours) {
    const context = canvas.getContext('webgl2', {
      antialias: false,
      alpha: false,
      stencil: true,
      depth: false
    })
    if (context === null || context.getExtension('EXT_color_buffer_float') === null)
      throw new Error('no WebGL 2 with fractions')
    this.#gl = new WebGLRenderer({ canvas, context, antialias: false, stencil: true, depth: false })
    this.#gl.autoClear = false
    this.#gl.setClearColor(0, 0)
    const exact = context.getExtension('EXT_float_blend') !== null
    this.#camera.matrixAutoUpdate = true
    const depth = new DepthTexture(1, 1, UnsignedInt248Type)
    depth.format = DepthStencilFormat
    depth.minFilter = depth.magFilter = NearestFilter
    this.#shown = new WebGLRenderTarget(1, 1, {
      type: HalfFloatType,
      depthTexture: depth,
      depthBuffer: true,
      stencilBuffer: true
    })
    const sum = { type: exact ? FloatType : HalfFloatType, depthBuffer: false, count: 2 } as const
    this.#sums = new WebGLRenderTarget(1, 1, { ...sum, minFilter: NearestFilter, magFilter: NearestFilter })
    const small = {
      type: UnsignedByteType,
      depthBuffer: false,
      minFilter: LinearFilter,
      magFilter: LinearFilter
    } as const
    this.#shade = new WebGLRenderTarget(1, 1, small)
    this.#soft = new WebGLRenderTarget(1, 1, small)
    this.#common = sharedUniforms(depth)
    this.#mask = bodyMaterial(this.#common, MASK_FRAGMENT, { flatAt: { value: 0 } })
    this.#mask.side = DoubleSide
    this.#sheet = sheetMesh(SHEET_FRAGMENT, {
      shown: { value: this.#shown.texture },
      lost: { value: this.#sums.textures[0] },
      milk: { value: this.#sums.textures[1] },
      shade: { value: this.#soft.texture },
      paper: { value: new Vector3() },
      plate: { value: new Vector3() },
      dark: { value: 0 }
    })
    this.#blur = sheetMesh(SOFT_FRAGMENT, {
      mask: { value: this.#shade.texture },
      blur: { value: new Vector2() },
      fall: { value: new Vector2() }
    })
    this.#model = model
    this.#colours = colours
    this.update(model)
  }

  /** Another model, or the same one worked over. */
  update(model: RoundModel): void {
    this.#drop()
    this.#model = model
    const { minX, minY, maxX, maxY } = model.box
    const span = Math.hypot(maxX - minX, maxY - minY)
    this.#bodies = model.bodies.map(b => drawableOf(b, this.#common, this.#colours, span))
  }

  set colours(colours: Colours) {
    this.#colours = colours
    for (const d of this.#bodies) inkWith(d, colours)
  }

  /** Paints what is shown, `width` × `height` CSS pixels with `ratio` of the canvas's own to each. */
  paint(shown: Shown, width: number, height: number, ratio: number): void {
    const gl = this.#gl
    gl.setPixelRatio(ratio)
    gl.setSize(width, height, false)
    const [w, h] = [Math.max(1, Math.floor(width * ratio)), Math.max(1, Math.floor(height * ratio))]
    if (this.#shown.width !== w || this.#shown.height !== h) {
      this.#shown.setSize(w, h)
      this.#sums.setSize(w, h)
      for (const t of [this.#shade, this.#soft]) t.setSize(Math.ceil(w / 4), Math.ceil(h / 4))
    }
    const perMm = aim(this.#camera, this.#common, this.#model, shown, [width, height], [w, h])
    ;(this.#common['ink']!.value as Vector3).set(...linear(this.#colours.ink))
    this.#common['pixel']!.value = 1 / perMm
    this.#paintSolids(shown)
    this.#paintSums()
    this.#paintShade(shown, perMm, width, height)
    gl.setRenderTarget(null)
    this.#finish(shown.cut)
  }

  /** Tells how long the card took for what it was given, ms, once it is done. */
  async took(): Promise<number> {
    const gl = this.#gl.getContext() as WebGL2RenderingContext
    const start = performance.now()
    const fence = gl.fenceSync(gl.SYNC_GPU_COMMANDS_COMPLETE, 0)
    gl.flush()
    while (fence !== null && !gl.isContextLost()) {
      const state = gl.getSyncParameter(fence, gl.SYNC_STATUS) as number
      if (state === gl.SIGNALED || performance.now() - start > 5000) break
      await new Promise(done => setTimeout(done, 15))
    }
    gl.deleteSync(fence)
    return performance.now() - start
  }

  /** Leaves a canvas whose card has gone: nothing of it can be freed one by one. */
  abandon(): void {
    this.#gl.forceContextLoss()
  }

  dispose(): void {
    this.#drop()
    for (const t of [this.#shown, this.#sums, this.#shade, this.#soft]) t.dispose()
    this.#gl.dispose()
    // A browser grants a page few contexts: this one is given back now, not when memory is next tidied.
    this.#gl.forceContextLoss()
  }

  #paintSolids({ cut }: Shown): void {
    const gl = this.#gl
    gl.setRenderTarget(this.#shown)
    gl.clear(true, true, true)
    const solids = this.#bodies.filter(d => d.solid)
    this.#render(...solids.map(d => d.mesh))
    this.#paintCaps(cut, solids)
    this.#render(...solids.flatMap(d => d.rims ?? []))
  }

  #paintCaps(cut: Cut | null, bodies: readonly Drawable[]): void {
    if (cut === null) return
    const { minX, minY, maxX, maxY } = this.#model.box
    const reach = Math.max(Math.abs(minX), Math.abs(minY), Math.abs(maxX), Math.abs(maxY)) + 1
    const plane = cutPlane(cut.along, cut.at, reach, this.#model.thicknessMm)
    for (const d of bodies) {
      this.#gl.clear(false, false, true)
      this.#render(...d.counters)
      const cap = new Mesh(plane, d.cap)
      cap.frustumCulled = false
      this.#render(cap)
    }
    plane.dispose()
  }

  #paintSums(): void {
    this.#gl.setRenderTarget(this.#sums)
    this.#gl.clear(true, false, false)
    this.#render(...this.#bodies.filter(d => !d.solid).map(d => d.mesh))
  }

  #paintShade({ face }: Shown, perMm: number, width: number, height: number): void {
    this.#gl.setRenderTarget(this.#shade)
    this.#gl.clear(true, false, false)
    this.#mask.uniforms['flatAt']!.value = face === 'front' ? 0 : this.#model.thicknessMm
    this.#scene.overrideMaterial = this.#mask
    this.#render(...this.#bodies.map(d => d.mesh))
    this.#scene.overrideMaterial = null
    const u = uniformsOf(this.#blur)
    const soft = (0.35 * this.#model.thicknessMm + 6) * perMm
    ;(u['blur']!.value as Vector2).set(soft / width, soft / height)
    ;(u['fall']!.value as Vector2).set((-0.25 * soft) / width, (0.45 * soft) / height)
    this.#gl.setRenderTarget(this.#soft)
    this.#render(this.#blur)
  }

  #finish(cut: Cut | null): void {
    const u = uniformsOf(this.#sheet)
    const { paper, plate, shade } = this.#colours
    ;(u['paper']!.value as Vector3).set(...linear(paper))
    ;(u['plate']!.value as Vector3).set(...linear(plate))
    u['dark']!.value = shade
    this.#render(this.#sheet)
    const clear = this.#bodies.filter(d => !d.solid)
    this.#render(...clear.flatMap(d => d.sheen ?? []))
    this.#paintCaps(cut, clear)
    this.#render(...clear.flatMap(d => d.rims ?? []))
  }

  #render(...things: (Mesh | LineSegments)[]): void {
    if (things.length === 0) return
    this.#scene.clear()
    this.#scene.add(...things)
    this.#gl.render(this.#scene, this.#camera)
  }

  #drop(): void {
    for (const d of this.#bodies) letGo(d)
    this.#bodies = []
  }
}
