import { inRange } from '../quantity/range.ts'
import { hollowMm } from './cup.ts'

/**
 * A board that takes up or gives off moisture through one face only: how hollow it goes on the way, at its worst.
 *
 *   u(x, F) = 1 − Σ (4/((2n+1)·π))·sin((2n+1)·πx/2)·exp(−(2n+1)²·π²·F/4)      x from the open face 0 to the sealed 1
 *   g       = (ΔM/t)·12·∫ u·(x − ½) dx,   κ = C·g,   f = κ·w²/8
 *
 *   ΔM  change of the balance of its air, %     t  thickness, mm      F = D·time/t²     C  movement per %
 *
 * The slope grows while the front goes in, is greatest when it has reached the sealed face, and dies out with the rest:
 * a board finished or covered on one face moves out of flat and comes back, in days or weeks. Term by term
 * 12·∫ sin(kx)·(x − ½) dx = 12·(sin k/k² − 1/(2k)) with k = (2n+1)·π/2.
 *
 * Source: Crank, plane sheet with one face held and the other tight (memory); strain of a free strip (derived).
 * Check: {@link ONE_SIDED_SLOPE} and its time against explicit diffusion (test).
 *
 * Limits: the open face is taken in balance with its air at once, which is the worst; elastic, free; the sealed face is
 * taken as tight: a thin coat leaves less.
 */

/** Greatest slope, in ΔM/t, and the Fourier number at which it stands. */
export const ONE_SIDED_SLOPE = greatest()

/** Greatest hollow of a board with one face sealed after a change of its air by `moistureChangePct`, mm, unsigned. */
export function oneSidedHollowMm(input: {
  readonly coefficientPerPct: number
  readonly moistureChangePct: number
  readonly widthMm: number
  readonly thicknessMm: number
}): number {
  const { coefficientPerPct, moistureChangePct, widthMm, thicknessMm } = input
  inRange('coefficient of movement', coefficientPerPct, 0, 0.01, 'per %')
  inRange('change of moisture', moistureChangePct, -60, 60, '%')
  inRange('thickness', thicknessMm, 0.2, 1000, 'mm')
  const curvature = (coefficientPerPct * ONE_SIDED_SLOPE.share * Math.abs(moistureChangePct)) / thicknessMm
  return hollowMm(Math.min(0.1, curvature), widthMm)
}

// Slope of the profile at F, in ΔM/t; negative: drier or damper at the open face than at the sealed one.
function slopeAt(fo: number): number {
  let sum = 0
  for (let n = 0; n < 60; n++) {
    const k = ((2 * n + 1) * Math.PI) / 2
    // ∫ of −(2/k)·sin(kx)·e^… times 12·(x − ½)
    sum -= (2 / k) * 12 * ((n % 2 === 0 ? 1 : -1) / k ** 2 - 1 / (2 * k)) * Math.exp(-k * k * fo)
  }
  return sum
}

function greatest(): { readonly share: number; readonly fo: number } {
  let best = { share: 0, fo: 0 }
  for (let fo = 0.01; fo < 0.3; fo += 0.0005) {
    const share = Math.abs(slopeAt(fo))
    if (share > best.share) best = { share, fo }
  }
  return best
}
