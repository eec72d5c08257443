import type { Entry } from '../piece/entry.ts'
import type { Piece, Pour } from '../piece/piece-schema.ts'
import type { Step } from './step.ts'
import { pourFace } from './step.ts'

/** A step before it is known what number it has and how the piece lies then. */
export type Draft = Omit<Step, 'number' | 'up' | 'inMould'>

/** What steps are called that concern no entry. */
export const WORDS = {
  'make mould': 'Make the mould',
  demould: 'Take it out of the mould',
  'turn over': 'Turn over',
  'drill pins': 'Drill the pin holes',
  trim: 'Trim to the outline',
  'work edges': 'Work the edges',
  deliver: 'Deliver'
} as const

/** What a pour is called as a step. */
export function pourWords(pour: Entry<Pour>, piece: Piece): string {
  switch (pour.value.kind) {
    case 'seal':
      return `Seal with ${pour.id}`
    case 'flood':
      return `Flood ${pour.id} over the ${pourFace(pour.value, piece)}`
    case 'inlay':
      return `Fill with ${pour.id}`
    default:
      return `Pour ${pour.id}`
  }
}
