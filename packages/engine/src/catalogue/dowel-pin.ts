import type { CatalogueRecord } from './record.ts'

/**
 * Parallel pins of steel as they are sold: diameters, lengths and tolerance class.
 *
 * Limits: the sizes that pins for a bed are taken from, 3 to 20 mm; the standards go down to 0.6 and up to 50 mm.
 */
export interface DowelPinRecord extends CatalogueRecord {
  readonly diametersMm: readonly number[]
  readonly lengthsMm: readonly number[]
  /** Of its diameter (ISO 286). */
  readonly toleranceClass: 'm6' | 'h8'
}

const LENGTHS_MM = [8, 10, 12, 14, 16, 18, 20, 22, 24, 26, 28, 30, 32, 35, 40, 45, 50, 55, 60, 65, 70, 75, 80]

const DOWEL_PINS: readonly DowelPinRecord[] = [
  {
    id: 'iso-8734',
    name: 'hardened parallel pin, ISO 8734, m6',
    source: 'ISO 8734:1997: diameters 1 to 20 mm (range read), series of diameters and lengths',
    confidence: 'memory',
    diametersMm: [3, 4, 5, 6, 8, 10, 12, 16, 20],
    lengthsMm: LENGTHS_MM,
    toleranceClass: 'm6'
  },
  {
    id: 'iso-2338',
    name: 'parallel pin, ISO 2338, h8',
    source: 'ISO 2338: unhardened or austenitic, tolerance m6 or h8, series of diameters and lengths',
    confidence: 'memory',
    diametersMm: [3, 4, 5, 6, 8, 10, 12, 16, 20, 25, 30],
    lengthsMm: LENGTHS_MM,
    toleranceClass: 'h8'
  }
]

/** The pin of a diameter, hardened first; null where none is sold. */
export function dowelPinOf(diameterMm: number): DowelPinRecord | null {
  return DOWEL_PINS.find(p => p.diametersMm.some(d => Math.abs(d - diameterMm) < 1e-6)) ?? null
}
