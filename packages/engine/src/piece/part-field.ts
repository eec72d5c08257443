import { choice, length, size } from './field.ts'

/** Classes that pins and shafts of fittings are sold in. */
const SHAFT_CLASSES = [
  'h6',
  'h7',
  'h8',
  'h9',
  'h11',
  'm6',
  'k6',
  'n6',
  'p6',
  'g6',
  'f7',
  'f8',
  'e8',
  'd9'
] as const

/** What a fit asks of a bought-in part beyond its size: keys of a hardware entry. */
export const partFit = {
  corner: length('radius of the corners of its body', 0, 500).optional(),
  tolerance: length('how far its size may be off, either way', 0, 5).optional(),
  toleranceClass: choice('tolerance class of a pin or shaft (ISO 286)', SHAFT_CLASSES).optional(),
  film: length('dry film of a coat on the part itself', 0, 2).optional(),
  hand: size('reach of its longest hand, from the middle', 2000).optional(),
  glass: length('from the face its hands are before to the glass over them', 0, 500).optional()
}
