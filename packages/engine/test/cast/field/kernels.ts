import type { KernelMaker } from '../../../src/cast/field/field-run.ts'
import { plainKernel } from '../../../src/cast/field/plain-kernel.ts'
import { wasmKernel } from '../../../src/cast/field/wasm-kernel.ts'

/** The kernel in WebAssembly; a test machine without vectors fails loudly instead of testing the plain one twice. */
const vectors: KernelMaker = layout => {
  const kernel = wasmKernel(layout)
  if (!kernel) throw new Error('this engine has no vectors in WebAssembly')
  return kernel
}

export const KERNELS: readonly (readonly [name: string, make: KernelMaker])[] = [
  ['plain', plainKernel],
  ['WebAssembly', vectors]
]
