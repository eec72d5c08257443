import type { EntryKind } from '../worker/field-table.ts'

/** The fields of an entry that a maker changes most, in the order they are asked. */
export const FIRST_FIELDS: Readonly<Record<EntryKind, readonly string[]>> = {
  piece: ['name', 'outline', 'down', 'climate', 'sun', 'food'],
  mould: ['margin', 'base', 'bearers', 'wall'],
  flatten: ['back', 'front'],
  timber: ['id', 'species', 'thickness', 'moisture', 'outline', 'held', 'sealed'],
  pour: ['id', 'resin', 'depth', 'height', 'fill', 'opaque', 'tint'],
  cut: ['id', 'kind', 'face', 'finishedDepth', 'depth', 'through', 'width', 'way', 'shape'],
  hardware: ['id', 'kind', 'face', 'at', 'turn', 'count'],
  marking: ['id', 'face', 'width', 'way'],
  edge: ['face', 'profile', 'size'],
  former: ['id', 'shape'],
  shop: ['name', 'currency']
}
