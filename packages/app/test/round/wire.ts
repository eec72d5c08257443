/** A model as text on its way into a page under test: typed arrays are named. */
export type Wire = string

const KINDS = { Float32Array, Uint32Array } as const

export function toWire(value: unknown): Wire {
  return JSON.stringify(value, (_key, v: unknown) => {
    if (v instanceof Float32Array) return { kind: 'Float32Array', list: [...v] }
    if (v instanceof Uint32Array) return { kind: 'Uint32Array', list: [...v] }
    return v
  })
}

export function fromWire(text: Wire): unknown {
  return JSON.parse(text, (_key, v: unknown) => {
    if (typeof v !== 'object' || v === null || !('list' in v) || !('kind' in v)) return v
    return KINDS[v.kind as keyof typeof KINDS].from(v.list as number[])
  })
}
