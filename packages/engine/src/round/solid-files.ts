import type { Work } from '../findings/work.ts'
import { coreModelOf } from '../sheets/model.ts'
import { escapeXml } from '../sheets/svg.ts'
import type { RoundBody, RoundModel } from './round-model.ts'
import { roundModel } from './round-model.ts'

/** The finished piece as solids: the parts of a 3MF package, and STL files by name. */
export function solidFiles(work: Work): {
  readonly threeMf: ReadonlyMap<string, string>
  readonly stl: ReadonlyMap<string, Uint8Array>
} {
  const model = roundModel(work, coreModelOf(work))
  return { threeMf: threeMfParts(model), stl: stlFiles(model) }
}

/** What the piece itself is of: parts bought in are no solids of it. */
export function solidsOf({ bodies }: RoundModel): RoundBody[] {
  return bodies.filter(b => b.kind !== 'hardware' && b.indices.length > 0)
}

const CORE = 'http://schemas.microsoft.com/3dmanufacturing/core/2015/02'
const START = 'http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel'

/**
 * The finished piece as the parts of a 3MF package (3MF Core Specification 1.4.0: read; the package by OPC: memory),
 * by their path within it: an object for each material, with its name and colour, in millimetres, moved into the
 * positive octant. Timber and resin of one entry are one object of as many closed shells as it has levels. Parts bought
 * in are left out.
 *
 * Limits: those of {@link roundModel}: outlines stray 0.03 mm, leaning sides are followed by steps.
 */
export function threeMfParts(model: RoundModel): Map<string, string> {
  return new Map([
    [
      '[Content_Types].xml',
      '<?xml version="1.0" encoding="UTF-8"?>\n<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="model" ContentType="application/vnd.ms-package.3dmanufacturing-3dmodel+xml"/></Types>\n'
    ],
    [
      '_rels/.rels',
      `<?xml version="1.0" encoding="UTF-8"?>\n<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="rel0" Type="${START}" Target="/3D/3dmodel.model"/></Relationships>\n`
    ],
    ['3D/3dmodel.model', modelText(model)]
  ])
}

function modelText(model: RoundModel): string {
  const solids = solidsOf(model)
  const { minX, minY } = model.box
  const materials = solids.map(
    b => `<base name="${escapeXml(b.words)}" displaycolor="${b.paint === 'clear' ? '#E4DFD280' : b.paint}"/>`
  )
  const objects = solids.map(
    (b, k) =>
      `<object id="${k + 2}" type="model" name="${escapeXml(b.name)}" pid="1" pindex="${k}"><mesh>${vertices(b)}${triangles(b)}</mesh></object>`
  )
  const items = solids.map(
    (_, k) => `<item objectid="${k + 2}" transform="1 0 0 0 1 0 0 0 1 ${short(-minX)} ${short(-minY)} 0"/>`
  )
  return `<?xml version="1.0" encoding="UTF-8"?>
<model unit="millimeter" xml:lang="en" xmlns="${CORE}">
<metadata name="Title">${escapeXml(model.name)}</metadata>
<metadata name="Application">Castwright</metadata>
<resources><basematerials id="1">${materials.join('')}</basematerials>
${objects.join('\n')}
</resources>
<build>${items.join('')}</build>
</model>
`
}

function vertices({ positions }: RoundBody): string {
  let out = '<vertices>'
  for (let k = 0; k < positions.length; k += 3)
    out += `<vertex x="${short(positions[k]!)}" y="${short(positions[k + 1]!)}" z="${short(positions[k + 2]!)}"/>`
  return `${out}</vertices>`
}

function triangles({ indices }: RoundBody): string {
  let out = '<triangles>'
  for (let k = 0; k < indices.length; k += 3)
    out += `<triangle v1="${indices[k]}" v2="${indices[k + 1]}" v3="${indices[k + 2]}"/>`
  return `${out}</triangles>`
}

/** To a tenth of a micrometre, in the fewest signs. */
function short(mm: number): string {
  const text = mm.toFixed(4).replace(/\.?0+$/, '')
  return text === '-0' ? '0' : text
}

/**
 * One body as binary STL: a head of 80 bytes, the number of triangles, then normal and corners of each as 32-bit
 * numbers, little end first (the format as published in 1989; memory). Millimetres, which the format does not say.
 */
export function stlOf(body: Pick<RoundBody, 'positions' | 'indices'>): Uint8Array {
  const { positions, indices } = body
  const count = indices.length / 3
  const out = new Uint8Array(84 + 50 * count)
  // A head that does not begin with "solid", which would be read as text.
  for (const [k, c] of [...'Castwright, millimetres'].entries()) out[k] = c.charCodeAt(0)
  const view = new DataView(out.buffer)
  view.setUint32(80, count, true)
  for (let t = 0; t < count; t++) {
    const at = 84 + 50 * t
    const corner = (k: number, axis: number) => positions[3 * indices[3 * t + k]! + axis]!
    const u = [0, 1, 2].map(a => corner(1, a) - corner(0, a))
    const v = [0, 1, 2].map(a => corner(2, a) - corner(0, a))
    const n = [u[1]! * v[2]! - u[2]! * v[1]!, u[2]! * v[0]! - u[0]! * v[2]!, u[0]! * v[1]! - u[1]! * v[0]!]
    const long = Math.hypot(...n) || 1
    for (let a = 0; a < 3; a++) view.setFloat32(at + 4 * a, n[a]! / long, true)
    for (let k = 0; k < 3; k++)
      for (let a = 0; a < 3; a++) view.setFloat32(at + 12 + 12 * k + 4 * a, corner(k, a), true)
  }
  return out
}

/** The solids of a planned piece as STL, a file for each material. */
function stlFiles(model: RoundModel): Map<string, Uint8Array> {
  const files = new Map<string, Uint8Array>()
  for (const body of solidsOf(model)) {
    const name = `solid-${
      body.name
        .toLowerCase()
        .replace(/[^a-z0-9]+/g, '-')
        .replace(/^-|-$/g, '') || body.kind
    }`
    let file = `${name}.stl`
    for (let n = 2; files.has(file); n++) file = `${name}-${n}.stl`
    files.set(file, stlOf(body))
  }
  return files
}
