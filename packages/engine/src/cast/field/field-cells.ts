import type { FieldKernel, FieldShape } from './field-kernel.ts'
import type { FieldMaterial, FieldProblem } from './field-problem.ts'

/** How a problem lies in a kernel's arrays. */
export interface FieldCells {
  readonly shape: FieldShape
  /** Material of each place of the padded arrays, plus one; 0: nothing ever. */
  readonly material: Uint8Array
  /** Volume of a cell of each layer, m³. */
  readonly volumeM3: Float64Array
  readonly dzM: Float64Array
}

/** The shape that holds a problem, padded; throws when the numbers do not fit together. */
export function cellsOf(problem: FieldProblem): FieldCells {
  const { cells, dzM, dxM, dyM } = problem
  if (cells.length !== problem.nx * problem.ny * dzM.length)
    throw new Error(
      `${cells.length} cells for a grid of ${problem.nx} by ${problem.ny} by ${dzM.length}; as many as that`
    )
  const fours = (n: number): number => 4 * Math.ceil(n / 4)
  const nx = fours(problem.nx)
  const { ny } = problem
  const nz = fours(dzM.length)
  const plane = nx * nz
  const first = fours(plane + 4)
  const length = first + ny * plane + plane + 4
  const material = new Uint8Array(length)
  const fromX = new Int32Array(ny).fill(nx)
  const toX = new Int32Array(ny)
  const fromY = new Int32Array(nx).fill(ny)
  const toY = new Int32Array(nx)
  for (let iy = 0; iy < ny; iy++)
    for (let ix = 0; ix < problem.nx; ix++) {
      const from = (iy * problem.nx + ix) * dzM.length
      let any = 0
      for (let iz = 0; iz < dzM.length; iz++) {
        const m = cells[from + iz]!
        any |= m
        material[first + iy * plane + ix * nz + iz] = m
      }
      if (any === 0) continue
      fromX[iy] = Math.min(fromX[iy]!, 4 * Math.floor(ix / 4))
      toX[iy] = Math.max(toX[iy]!, 4 * Math.floor(ix / 4) + 4)
      fromY[ix] = Math.min(fromY[ix]!, iy)
      toY[ix] = Math.max(toY[ix]!, iy + 1)
    }
  const heights = new Float64Array(nz).fill(dzM[dzM.length - 1]!)
  heights.set(dzM)
  return {
    shape: { nx, ny, nz, first, length, fromX, toX, fromY, toY },
    material,
    volumeM3: heights.map(h => h * dxM * dyM),
    dzM: heights
  }
}

/** Faces towards air or mould: cell, area over film, and half the cell's depth over area. */
export interface FieldFaces {
  readonly cell: Int32Array
  /** 1/(h·A), K/W. */
  readonly outside: Float64Array
  /** half depth/A, m/m²: over k it is the resistance of the half cell. */
  readonly half: Float64Array
  /** Cells with at least one such face, each once. */
  readonly cells: Int32Array
}

/** The outer faces of all cells that hold something now. */
export function facesOf(problem: FieldProblem, c: FieldCells, kernel: FieldKernel): FieldFaces {
  const { nx, ny, nz, first } = c.shape
  const { films, dxM, dyM } = problem
  const { kBase } = kernel
  const plane = nx * nz
  const cell: number[] = []
  const outside: number[] = []
  const half: number[] = []
  const own: number[] = []
  const add = (at: number, film: number, areaM2: number, depthM: number): void => {
    if (!(film > 0)) return
    // faces come cell by cell
    if (own[own.length - 1] !== at) own.push(at)
    cell.push(at)
    outside.push(1 / (film * areaM2))
    half.push(depthM / 2 / areaM2)
  }
  const stands = columnsOf(c)
  // film of a side: what it is where something stands there, else that towards places off the plan
  const beside = (ix: number, iy: number): number =>
    ix < 0 || iy < 0 || ix >= nx || iy >= ny || stands[iy * nx + ix] === 0 ? films.side : films.sideways
  for (let iy = 0; iy < ny; iy++)
    for (let ix = 0; ix < nx; ix++) {
      if (stands[iy * nx + ix] === 0) continue
      const from = first + iy * plane + ix * nz
      const left = beside(ix - 1, iy)
      const right = beside(ix + 1, iy)
      const before = beside(ix, iy - 1)
      const behind = beside(ix, iy + 1)
      for (let iz = 0; iz < nz; iz++) {
        const at = from + iz
        if (!(kBase[at]! > 0)) continue
        const height = c.dzM[iz]!
        if (iz === 0) add(at, films.floor, dxM * dyM, height)
        else if (!(kBase[at - 1]! > 0)) add(at, films.down, dxM * dyM, height)
        if (iz === nz - 1 || !(kBase[at + 1]! > 0)) add(at, films.up, dxM * dyM, height)
        if (ix === 0 || !(kBase[at - nz]! > 0)) add(at, left, dyM * height, dxM)
        if (ix === nx - 1 || !(kBase[at + nz]! > 0)) add(at, right, dyM * height, dxM)
        if (!(kBase[at - plane]! > 0)) add(at, before, dxM * height, dyM)
        if (!(kBase[at + plane]! > 0)) add(at, behind, dxM * height, dyM)
      }
    }
  return {
    cell: Int32Array.from(cell),
    outside: Float64Array.from(outside),
    half: Float64Array.from(half),
    cells: Int32Array.from(own)
  }
}

/** 1 for each column in which anything ever stands. */
function columnsOf(c: FieldCells): Uint8Array {
  const { nx, ny, nz, first } = c.shape
  const stands = new Uint8Array(nx * ny)
  for (let column = 0; column < nx * ny; column++)
    for (let iz = 0; iz < nz && stands[column] === 0; iz++)
      if (c.material[first + column * nz + iz] !== 0) stands[column] = 1
  return stands
}

/** Conductance of the outer faces at the conversion of now, into the kernel's `film`. */
export function filmConductance(faces: FieldFaces, kernel: FieldKernel): void {
  const { film, kBase, kSlope } = kernel
  const conversion = kernel.conversion()
  const { cell, outside, half, cells } = faces
  for (let i = 0; i < cells.length; i++) film[cells[i]!] = 0
  for (let i = 0; i < cell.length; i++) {
    const c = cell[i]!
    const k = kBase[c]! + kSlope[c]! * conversion[c]!
    film[c]! += 1 / (outside[i]! + half[i]! / k)
  }
}

/** Puts a material into its cells; returns the highest layer it reaches, plus one. */
export function placeMaterial(
  problem: FieldProblem,
  c: FieldCells,
  kernel: FieldKernel,
  index: number,
  resinNumber: number
): number {
  const m: FieldMaterial = problem.materials[index]!
  const { nz, first, ny, nx } = c.shape
  const conversion = kernel.conversion()
  const before = kernel.triedConversion()
  const increment = kernel.increment()
  const tried = kernel.tried()
  let reach = 0
  for (let at = first; at < first + nx * ny * nz; at++) {
    if (c.material[at] !== index + 1) continue
    const iz = (at - first) % nz
    if (iz + 1 > reach) reach = iz + 1
    const volume = c.volumeM3[iz]!
    kernel.tempC[at] = m.startC
    kernel.peakC[at] = m.startC
    increment[at] = 0
    tried[at] = 0
    if (m.kind === 'inert') {
      kernel.capacity[at] = m.rhoCpJm3K * volume
      kernel.kBase[at] = m.kWmK
      continue
    }
    const { bulk, kinetics } = m.resin
    const { k, rhoCp, share } = m.stones ?? { k: 1, rhoCp: 1, share: 1 }
    kernel.capacity[at] = bulk.liquidKgM3 * bulk.cpJkgK * rhoCp * volume
    kernel.heat[at] = bulk.liquidKgM3 * kinetics.heatJPerKg * share * volume
    kernel.kBase[at] = bulk.kLiquidWmK * k
    kernel.kSlope[at] = bulk.kSlopeWmK * k
    kernel.resin[at] = resinNumber
    conversion[at] = m.startConversion ?? 0
    before[at] = m.startConversion ?? 0
    if ((m.startConversion ?? 0) >= kinetics.gelConversion) kernel.gelS[at] = Math.max(1e-3, m.atS)
  }
  return reach
}
