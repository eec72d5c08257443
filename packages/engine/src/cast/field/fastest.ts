import type { KernelMaker } from './field-run.ts'
import { plainKernel } from './plain-kernel.ts'
import { wasmKernel } from './wasm-kernel.ts'

/** The kernel in WebAssembly where the engine can, else the plain one. */
export const fastestKernel: KernelMaker = layout => wasmKernel(layout) ?? plainKernel(layout)
