import { GLSL3, Mesh, RawShaderMaterial } from 'three'
import { wholeSheet } from './body-shape.ts'
import type { Uniforms } from './drawable.ts'
import { SHEET_VERTEX } from './sheet-shaders.ts'

/** What is painted over the whole picture by one program. */
export function sheetMesh(fragmentShader: string, uniforms: Uniforms): Mesh {
  const mesh = new Mesh(
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
  mesh.frustumCulled = false
  return mesh
}

export function uniformsOf(mesh: Mesh): Uniforms {
  return (mesh.material as RawShaderMaterial).uniforms
}
