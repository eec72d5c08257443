import { SVGPathData } from 'svg-pathdata'

/** Path data through an affine map in the path's own frame (y down); curves and arcs stay what they are. */
export function mapped(d: string, m: readonly [number, number, number, number, number, number]): string {
  return new SVGPathData(d)
    .toAbs()
    .matrix(...m)
    .round(1e5)
    .encode()
}
