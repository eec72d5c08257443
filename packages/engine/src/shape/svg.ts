// To be written: the SVG reader.
import type { Region } from './region.ts'
export class SvgError extends Error {}
export interface SvgReading { readonly shapes: readonly { readonly id: string | null; readonly region: Region }[]; readonly region: Region }
export function readSvg(_text: string, _options: { tolMm: number; id?: string }): SvgReading {
  throw new SvgError('not yet')
}
