import type { BufferGeometry, IUniform } from 'three'
import {
  AddEquation,
  AlwaysStencilFunc,
  BackSide,
  CustomBlending,
  DecrementWrapStencilOp,
  DepthStencilFormat,
  DepthTexture,
  DoubleSide,
  FloatType,
  FrontSide,
  GLSL3,
  HalfFloatType,
  IncrementWrapStencilOp,
  KeepStencilOp,
  LinearFilter,
  LineSegments,
  Mesh,
  NearestFilter,
  NoBlending,
  NotEqualStencilFunc,
  OneFactor,
  OneMinusSrcAlphaFactor,
  OrthographicCamera,
  RawShaderMaterial,
  Scene,
  SrcAlphaFactor,
  UnsignedByteType,
  UnsignedInt248Type,
  Vector2,
  Vector3,
  Vector4,
  WebGLRenderer,
  WebGLRenderTarget
} from 'three'
import type { RoundBody, RoundModel } from '../../../engine/src/round/round-model.ts'
import { bodyShape, cutPlane, rimShape, wholeSheet } from './body-shape.ts'
import type { Colours } from './colours.ts'
import { linear } from './colours.ts'
import type { Stand } from './orbit.ts'
import {
  BODY_VERTEX,
  CAP_FRAGMENT,
  EDGE_FRAGMENT,
  MASK_FRAGMENT,
  RESIN_EDGE_FRAGMENT,
  RESIN_FRAGMENT,
  SHEEN_FRAGMENT,
  SHEET_FRAGMENT,
  SHEET_VERTEX,
  SOFT_FRAGMENT,
  SOLID_FRAGMENT
} from './shaders.ts'

export interface Cut {
  readonly along: 'x' | 'y'
  /** Place of the plane on the other axis, mm. */
  readonly at: number
}

/** What is shown of the piece, and from where. Heights finished, mm. */
export interface Shown {
  readonly stand: Stand
  readonly face: 'front' | 'back'
  readonly fromMm: number
  readonly toMm: number
  readonly cut: Cut | null
}

type Uniforms = Record<string, IUniform>

interface Drawable {
  readonly body: RoundBody
  readonly solid: boolean
  readonly mesh: Mesh
  readonly counters: readonly Mesh[]
  readonly cap: RawShaderMaterial | null
  readonly sheen: Mesh | null
  readonly rims: LineSegments | null
  readonly shapes: readonly BufferGeometry[]
}

/** From this much scattering over its own depth resin is as good as a solid: four fifths come back (Kubelka-Munk: S·t / (1 + S·t)). */
const SOLID_SCATTER = 4

/** Absorption beyond which a millimetre is black anyhow, 1/mm: sums keep their digits. */
const MOST_ABSORB = 4

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
      stencil: false,
      depth: false
    })
    if (context === null || context.getExtension('EXT_color_buffer_float') === null)
      throw new Error('no WebGL 2 with fractions')
    this.#gl = new WebGLRenderer({ canvas, context, antialias: false })
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
    this.#common = {
      look: { value: new Vector3() },
      lamp: { value: new Vector3() },
      cut: { value: new Vector4() },
      peel: { value: new Vector2() },
      range: { value: new Vector2() },
      middle: { value: 0 },
      corner: { value: new Vector3() },
      across: { value: new Vector3() },
      upward: { value: new Vector3() },
      solids: { value: depth },
      ink: { value: new Vector3() },
      pixel: { value: 1 }
    }
    this.#mask = this.#material(MASK_FRAGMENT, { flatAt: { value: 0 } })
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
    this.#bodies = model.bodies.map(b => this.#drawable(b))
  }

  set colours(colours: Colours) {
    this.#colours = colours
    for (const d of this.#bodies)
      if (d.rims !== null)
        (d.rims.material as RawShaderMaterial).uniforms['stroke']!.value = this.#stroke(d.body, d.solid)
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
    const perMm = this.#aim(shown, width, height)
    this.#common['pixel']!.value = 1 / perMm
    this.#paintSolids(shown)
    this.#paintSums()
    this.#paintShade(shown, perMm, width, height)
    gl.setRenderTarget(null)
    this.#finish()
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

  dispose(): void {
    this.#drop()
    for (const t of [this.#shown, this.#sums, this.#shade, this.#soft]) t.dispose()
    this.#gl.dispose()
  }

  #aim({ stand, face, fromMm, toMm, cut }: Shown, width: number, height: number): number {
    const { box, thicknessMm: thick } = this.#model
    const [cx, cy, cz] = [(box.minX + box.maxX) / 2, (box.minY + box.maxY) / 2, thick / 2]
    const a = (stand.turnDeg * Math.PI) / 180
    const e = (stand.riseDeg * Math.PI) / 180
    // Turned over about its upright on the sheet: x and z change sign together, as for the back on the plan.
    const over = face === 'back' ? -1 : 1
    const eye = new Vector3(over * Math.sin(a) * Math.cos(e), -Math.cos(a) * Math.cos(e), over * Math.sin(e))
    const up = new Vector3(-over * Math.sin(a) * Math.sin(e), Math.cos(a) * Math.sin(e), over * Math.cos(e))
    const [long, wide] = [box.maxX - box.minX, box.maxY - box.minY]
    const reach = Math.hypot(long, wide, thick) / 2 + 10
    const [sa, ca] = [Math.abs(Math.sin(a)), Math.abs(Math.cos(a))]
    const across = long * ca + wide * sa
    const high = (long * sa + wide * ca) * Math.sin(e) + thick * Math.cos(e)
    const perMm = stand.zoom * Math.min((0.88 * width) / across, (0.8 * height) / high)
    const c = this.#camera
    c.left = -width / 2 / perMm
    c.right = width / 2 / perMm
    c.top = height / 2 / perMm
    c.bottom = -height / 2 / perMm
    c.near = 0
    c.far = 4 * reach
    c.position.set(cx, cy, cz).addScaledVector(eye, 2 * reach)
    c.up.copy(up)
    c.lookAt(cx, cy, cz)
    c.updateProjectionMatrix()
    c.updateMatrixWorld()
    const look = eye.clone().negate()
    const start = look.dot(c.position)
    const right = up.clone().cross(eye)
    const u = this.#common
    ;(u['look']!.value as Vector3).copy(look)
    ;(u['lamp']!.value as Vector3)
      .copy(eye)
      .multiplyScalar(0.35)
      .addScaledVector(right, -0.45)
      .addScaledVector(new Vector3(0, 0, over), 0.9)
      .normalize()
    ;(u['range']!.value as Vector2).set(start + c.near, start + c.far)
    ;(u['peel']!.value as Vector2).set(fromMm, toMm)
    u['middle']!.value = cz
    const [w, h] = [this.#shown.width, this.#shown.height]
    ;(u['across']!.value as Vector3).copy(right).multiplyScalar(width / perMm / w)
    ;(u['upward']!.value as Vector3).copy(up).multiplyScalar(height / perMm / h)
    ;(u['corner']!.value as Vector3)
      .copy(c.position)
      .addScaledVector(right, c.left)
      .addScaledVector(up, c.bottom)
    const plane = u['cut']!.value as Vector4
    if (cut === null) plane.set(0, 0, 0, 1)
    else {
      // The side towards the eye goes.
      const n = cut.along === 'x' ? Math.sign(eye.y) || -1 : Math.sign(eye.x) || 1
      plane.set(cut.along === 'y' ? n : 0, cut.along === 'x' ? n : 0, 0, n * cut.at)
    }
    ;(u['ink']!.value as Vector3).set(...linear(this.#colours.ink))
    return perMm
  }

  #paintSolids({ cut }: Shown): void {
    const gl = this.#gl
    gl.setRenderTarget(this.#shown)
    gl.clear(true, true, true)
    const solids = this.#bodies.filter(d => d.solid)
    this.#render(...solids.map(d => d.mesh))
    if (cut !== null) {
      const { box, thicknessMm } = this.#model
      const reach =
        Math.max(Math.abs(box.minX), Math.abs(box.minY), Math.abs(box.maxX), Math.abs(box.maxY)) + 1
      const plane = cutPlane(cut.along, cut.at, reach, thicknessMm)
      for (const d of solids) {
        gl.clear(false, false, true)
        this.#render(...d.counters)
        const cap = new Mesh(plane, d.cap!)
        cap.frustumCulled = false
        this.#render(cap)
      }
      plane.dispose()
    }
    this.#render(...solids.flatMap(d => d.rims ?? []))
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

  #finish(): void {
    const u = uniformsOf(this.#sheet)
    const { paper, plate, shade } = this.#colours
    ;(u['paper']!.value as Vector3).set(...linear(paper))
    ;(u['plate']!.value as Vector3).set(...linear(plate))
    u['dark']!.value = shade
    this.#render(this.#sheet)
    const clear = this.#bodies.filter(d => !d.solid)
    this.#render(...clear.flatMap(d => d.sheen ?? []))
    this.#render(...clear.flatMap(d => d.rims ?? []))
  }

  #render(...things: (Mesh | LineSegments)[]): void {
    if (things.length === 0) return
    this.#scene.clear()
    this.#scene.add(...things)
    this.#gl.render(this.#scene, this.#camera)
  }

  #material(fragmentShader: string, own: Uniforms): RawShaderMaterial {
    return new RawShaderMaterial({
      glslVersion: GLSL3,
      vertexShader: BODY_VERTEX,
      fragmentShader,
      uniforms: { ...this.#common, flatAt: { value: -1e9 }, ...own }
    })
  }

  #drawable(body: RoundBody): Drawable {
    const depth = body.toMm - body.fromMm
    const solid = !body.lets || body.scatterPerMm * depth > SOLID_SCATTER
    const paint = new Vector3(...linear(body.paint === 'clear' ? '#ffffff' : body.paint))
    const shape = bodyShape(body)
    const rim = rimShape(body)
    const rims = this.#lines(rim, body, solid)
    if (!solid) {
      const resin = this.#material(RESIN_FRAGMENT, {
        absorb: { value: new Vector3(...body.absorbPerMm.map(k => Math.min(k, MOST_ABSORB))) },
        scatter: { value: body.scatterPerMm },
        paint: { value: paint }
      })
      resin.side = DoubleSide
      resin.depthTest = false
      resin.depthWrite = false
      resin.blending = CustomBlending
      resin.blendEquation = AddEquation
      resin.blendSrc = resin.blendDst = resin.blendSrcAlpha = resin.blendDstAlpha = OneFactor
      const sheen = this.#material(SHEEN_FRAGMENT, {
        ends: { value: new Vector2(body.fromMm, body.toMm) },
        span: {
          value: Math.hypot(
            this.#model.box.maxX - this.#model.box.minX,
            this.#model.box.maxY - this.#model.box.minY
          )
        }
      })
      sheen.side = FrontSide
      sheen.depthTest = false
      sheen.depthWrite = false
      sheen.transparent = true
      sheen.blending = CustomBlending
      sheen.blendSrc = OneFactor
      sheen.blendDst = OneMinusSrcAlphaFactor
      return {
        body,
        solid,
        mesh: whole(new Mesh(shape, resin)),
        counters: [],
        cap: null,
        sheen: whole(new Mesh(shape, sheen)),
        rims,
        shapes: [shape, rim]
      }
    }
    const grained = body.grainDeg === null ? 0 : (body.grainDeg * Math.PI) / 180
    const substance = {
      paint: { value: paint },
      grain: { value: new Vector3(Math.cos(grained), Math.sin(grained), body.grainDeg === null ? 0 : 1) }
    }
    const skin = this.#material(SOLID_FRAGMENT, substance)
    // Faces stand a hair back, so that their edges are drawn whole.
    skin.polygonOffset = true
    skin.polygonOffsetFactor = 1
    skin.polygonOffsetUnits = 2
    skin.blending = NoBlending
    const cap = this.#material(CAP_FRAGMENT, substance)
    cap.side = DoubleSide
    cap.stencilWrite = true
    cap.stencilFunc = NotEqualStencilFunc
    cap.stencilRef = 0
    cap.blending = NoBlending
    return {
      body,
      solid,
      mesh: whole(new Mesh(shape, skin)),
      counters: [this.#counter(shape, BackSide), this.#counter(shape, FrontSide)],
      cap,
      sheen: null,
      rims,
      shapes: [shape, rim]
    }
  }

  // Where more faces lead out of a body than into it beyond the cut, the cut lies inside the body.
  #counter(shape: BufferGeometry, side: typeof BackSide | typeof FrontSide): Mesh {
    const m = this.#material(MASK_FRAGMENT, {})
    m.side = side
    m.colorWrite = false
    m.depthWrite = false
    m.depthTest = false
    m.stencilWrite = true
    m.stencilFunc = AlwaysStencilFunc
    const op = side === BackSide ? IncrementWrapStencilOp : DecrementWrapStencilOp
    m.stencilZPass = m.stencilZFail = op
    m.stencilFail = KeepStencilOp
    return whole(new Mesh(shape, m))
  }

  #lines(rim: BufferGeometry, body: RoundBody, solid: boolean): LineSegments | null {
    if (body.rims.length === 0) return null
    const m = this.#material(solid ? EDGE_FRAGMENT : RESIN_EDGE_FRAGMENT, {
      stroke: { value: this.#stroke(body, solid) }
    })
    m.transparent = true
    m.depthWrite = false
    m.depthTest = solid
    m.blending = CustomBlending
    m.blendSrc = SrcAlphaFactor
    m.blendDst = OneMinusSrcAlphaFactor
    m.blendSrcAlpha = OneFactor
    const lines = new LineSegments(rim, m)
    lines.frustumCulled = false
    return lines
  }

  // Solids are drawn before light is coded for the screen, resin after.
  #stroke(body: RoundBody, solid: boolean): Vector4 {
    if (solid) return new Vector4(...linear('#2a2622'), body.kind === 'hardware' ? 0.5 : 0.62)
    const [r, g, b] = [1, 3, 5].map(k => Number.parseInt(this.#colours.ink.slice(k, k + 2), 16) / 255)
    return new Vector4(r!, g!, b!, body.kind === 'marking' ? 0 : 0.45)
  }

  #drop(): void {
    for (const d of this.#bodies) {
      for (const s of d.shapes) s.dispose()
      for (const m of [d.mesh, ...d.counters, d.sheen, d.rims])
        (m?.material as RawShaderMaterial | undefined)?.dispose()
      d.cap?.dispose()
    }
    this.#bodies = []
  }
}

function sheetMesh(fragmentShader: string, uniforms: Uniforms): Mesh {
  return whole(
    new Mesh(
      wholeSheet(),
      new RawShaderMaterial({
        glslVersion: GLSL3,
        vertexShader: SHEET_VERTEX,
        fragmentShader,
        depthTest: false,
        depthWrite: false,
        uniforms
      })
    )
  )
}

function uniformsOf(mesh: Mesh): Uniforms {
  return (mesh.material as RawShaderMaterial).uniforms
}

function whole(mesh: Mesh): Mesh {
  mesh.frustumCulled = false
  return mesh
}
