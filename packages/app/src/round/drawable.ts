import type { BufferGeometry, IUniform } from 'three'
import {
  AddEquation,
  AlwaysStencilFunc,
  BackSide,
  CustomBlending,
  DecrementWrapStencilOp,
  DoubleSide,
  FrontSide,
  GLSL3,
  IncrementWrapStencilOp,
  KeepStencilOp,
  LineSegments,
  Mesh,
  NoBlending,
  NotEqualStencilFunc,
  OneFactor,
  OneMinusSrcAlphaFactor,
  RawShaderMaterial,
  SrcAlphaFactor,
  Vector2,
  Vector3,
  Vector4
} from 'three'
import type { RoundBody } from '../../../engine/src/round/round-model.ts'
import { bodyShape, rimShape } from './body-shape.ts'
import type { Colours } from './colours.ts'
import { linear } from './colours.ts'
import {
  BODY_VERTEX,
  CAP_FRAGMENT,
  EDGE_FRAGMENT,
  MASK_FRAGMENT,
  RESIN_CAP_FRAGMENT,
  RESIN_EDGE_FRAGMENT,
  RESIN_FRAGMENT,
  SHEEN_FRAGMENT,
  SOLID_FRAGMENT
} from './shaders.ts'

export type Uniforms = Record<string, IUniform>

/** All that draws one body. */
export interface Drawable {
  readonly body: RoundBody
  readonly solid: boolean
  readonly mesh: Mesh
  readonly counters: readonly Mesh[]
  readonly cap: RawShaderMaterial
  readonly sheen: Mesh | null
  readonly rims: LineSegments | null
  readonly shapes: readonly BufferGeometry[]
}

/** From this much scattering over its own depth resin is as good as a solid: four fifths come back (Kubelka-Munk: S·t / (1 + S·t)). */
const SOLID_SCATTER = 4

/** Absorption beyond which a millimetre is black anyhow, 1/mm: sums keep their digits. */
const MOST_ABSORB = 4

/** A material that draws bodies, with what all of them share. */
export function bodyMaterial(common: Uniforms, fragmentShader: string, own: Uniforms): RawShaderMaterial {
  return new RawShaderMaterial({
    glslVersion: GLSL3,
    vertexShader: BODY_VERTEX,
    fragmentShader,
    uniforms: { ...common, flatAt: { value: -1e9 }, ...own }
  })
}

/** What draws a body; `spanMm` is the diagonal of the piece. */
export function drawableOf(body: RoundBody, common: Uniforms, colours: Colours, spanMm: number): Drawable {
  const depth = body.toMm - body.fromMm
  const solid = !body.lets || body.scatterPerMm * depth > SOLID_SCATTER
  const paint = new Vector3(...linear(body.paint === 'clear' ? '#ffffff' : body.paint))
  const shape = bodyShape(body)
  const rim = rimShape(body)
  const rims = linesOf(rim, body, solid, common, colours)
  const counters = [counter(shape, common, BackSide), counter(shape, common, FrontSide)]
  if (!solid) {
    const resin = bodyMaterial(common, RESIN_FRAGMENT, {
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
    const cap = capOf(common, RESIN_CAP_FRAGMENT, { stroke: { value: strokeOf(body, solid, colours) } })
    cap.transparent = true
    const sheen = bodyMaterial(common, SHEEN_FRAGMENT, {
      ends: { value: new Vector2(body.fromMm, body.toMm) },
      span: { value: spanMm }
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
      counters,
      cap,
      // Filled lines are sanded and oiled with the face: they do not shine.
      sheen: body.kind === 'marking' ? null : whole(new Mesh(shape, sheen)),
      rims,
      shapes: [shape, rim]
    }
  }
  const grained = body.grainDeg === null ? 0 : (body.grainDeg * Math.PI) / 180
  const substance = {
    paint: { value: paint },
    grain: { value: new Vector3(Math.cos(grained), Math.sin(grained), body.grainDeg === null ? 0 : 1) }
  }
  const skin = bodyMaterial(common, SOLID_FRAGMENT, substance)
  // Faces stand a hair back, so that their edges are drawn whole.
  skin.polygonOffset = true
  skin.polygonOffsetFactor = 1
  skin.polygonOffsetUnits = 2
  skin.blending = NoBlending
  const cap = capOf(common, CAP_FRAGMENT, substance)
  cap.blending = NoBlending
  return {
    body,
    solid,
    mesh: whole(new Mesh(shape, skin)),
    counters,
    cap,
    sheen: null,
    rims,
    shapes: [shape, rim]
  }
}

// A cut face, drawn where the stencil has counted more faces out of the body than into it.
function capOf(common: Uniforms, fragment: string, own: Uniforms): RawShaderMaterial {
  const cap = bodyMaterial(common, fragment, own)
  cap.side = DoubleSide
  cap.stencilWrite = true
  cap.stencilFunc = NotEqualStencilFunc
  cap.stencilRef = 0
  return cap
}

// Where more faces lead out of a body than into it beyond the cut, the cut lies inside the body.
function counter(shape: BufferGeometry, common: Uniforms, side: typeof BackSide | typeof FrontSide): Mesh {
  const m = bodyMaterial(common, MASK_FRAGMENT, {})
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

function linesOf(
  rim: BufferGeometry,
  body: RoundBody,
  solid: boolean,
  common: Uniforms,
  colours: Colours
): LineSegments | null {
  if (body.rims.length === 0) return null
  const m = bodyMaterial(common, solid ? EDGE_FRAGMENT : RESIN_EDGE_FRAGMENT, {
    stroke: { value: strokeOf(body, solid, colours) }
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

/** Gives what is drawn in ink another colour. */
export function inkWith({ body, solid, rims, cap }: Drawable, colours: Colours): void {
  const stroke = strokeOf(body, solid, colours)
  for (const m of [rims?.material as RawShaderMaterial | undefined, cap])
    if (m?.uniforms['stroke'] !== undefined) m.uniforms['stroke'].value = stroke
}

/** Colour of a body's edges: solids are drawn before light is coded for the screen, resin after. */
function strokeOf(body: RoundBody, solid: boolean, colours: Colours): Vector4 {
  if (solid) return new Vector4(...linear('#2a2622'), body.kind === 'hardware' ? 0.5 : 0.62)
  const [r, g, b] = [1, 3, 5].map(k => Number.parseInt(colours.ink.slice(k, k + 2), 16) / 255)
  return new Vector4(r!, g!, b!, body.kind === 'marking' ? 0 : 0.45)
}

/** Frees what the card holds of a body. */
export function letGo(d: Drawable): void {
  for (const s of d.shapes) s.dispose()
  for (const m of [d.mesh, ...d.counters, d.sheen, d.rims])
    (m?.material as RawShaderMaterial | undefined)?.dispose()
  d.cap.dispose()
}

function whole(mesh: Mesh): Mesh {
  mesh.frustumCulled = false
  return mesh
}
