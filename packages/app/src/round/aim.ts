import type { DepthTexture, OrthographicCamera } from 'three'
import { Vector2, Vector3, Vector4 } from 'three'
import type { RoundModel } from '../../../engine/src/round/round-model.ts'
import type { Uniforms } from './drawable.ts'
import type { Stand } from './orbit.ts'

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

/** What all programs of bodies share; `solids` holds how far the nearest solid lies. Filled in by {@link aim}. */
export function sharedUniforms(solids: DepthTexture): Uniforms {
  return {
    look: { value: new Vector3() },
    lamp: { value: new Vector3() },
    cut: { value: new Vector4() },
    peel: { value: new Vector2() },
    range: { value: new Vector2() },
    middle: { value: 0 },
    corner: { value: new Vector3() },
    across: { value: new Vector3() },
    upward: { value: new Vector3() },
    solids: { value: solids },
    ink: { value: new Vector3() },
    pixel: { value: 1 }
  }
}

type Size = readonly [width: number, height: number]

/**
 * Points the camera and tells the programs where it stands; returns CSS pixels a millimetre of the piece takes.
 * `pixels`: size of the picture in its own pixels.
 */
export function aim(
  c: OrthographicCamera,
  u: Uniforms,
  model: RoundModel,
  { stand, face, fromMm, toMm, cut }: Shown,
  [width, height]: Size,
  [w, h]: Size
): number {
  const { box, thicknessMm: thick } = model
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
  return perMm
}
