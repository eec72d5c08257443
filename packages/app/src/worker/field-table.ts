/** A field of a document as the screens offer it, derived from the schema. */
export interface Field {
  readonly key: string
  readonly description: string
  readonly type:
    | 'quantity'
    | 'number'
    | 'whole'
    | 'words'
    | 'choice'
    | 'yes'
    | 'point'
    | 'shape'
    | 'group'
    | 'list'
    | 'lines'
    | 'other'
  /** Of a plain number, as its description ends with it. */
  readonly unit?: string
  readonly dimension?: 'length' | 'mass' | 'volume' | 'temperature' | 'time' | 'percent'
  readonly min?: number
  readonly max?: number
  readonly options?: readonly string[]
  /** Names of the catalogue that fit, with what they are. */
  readonly catalogue?: readonly (readonly [id: string, name: string])[]
  readonly fallback?: unknown
  /** Of a group, or of each entry of a list. */
  readonly fields?: readonly Field[]
  readonly example?: unknown
  readonly required: boolean
}

export type EntryKind =
  | 'piece'
  | 'mould'
  | 'flatten'
  | 'timber'
  | 'pour'
  | 'cut'
  | 'hardware'
  | 'marking'
  | 'edge'
  | 'former'
  | 'shop'
export type FieldTable = Readonly<Record<EntryKind, readonly Field[]>> & {
  readonly tint: readonly (readonly [id: string, name: string])[]
  readonly stones: readonly (readonly [id: string, name: string])[]
  readonly coats: readonly (readonly [id: string, name: string])[]
  readonly rooms: readonly (readonly [id: string, name: string])[]
}
