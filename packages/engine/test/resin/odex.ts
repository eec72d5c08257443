import { createRequire } from 'node:module'

/**
 * The independent integrator of these tests: ODEX of Hairer and Wanner (extrapolation of the midpoint rule),
 * a published general-purpose library. Its package ships sources that do not pass our strict types, so it
 * is loaded by name and given the little of its surface that is used here.
 */
interface OdexSolver {
  absoluteTolerance: number
  relativeTolerance: number
  maxSteps: number
  initialStepSize: number
  solve(
    f: (x: number, y: number[]) => number[],
    x: number,
    y: number[],
    end: number
  ): { y: number[]; outcome: number }
}
const { Solver } = createRequire(import.meta.url)('odex') as { Solver: new (n: number) => OdexSolver }

/** y at `end` from y0 at 0; tolerance 1e-11 relative and absolute. */
export function integrate(
  f: (x: number, y: number[]) => number[],
  y0: readonly number[],
  end: number
): number[] {
  const solver = new Solver(y0.length)
  solver.absoluteTolerance = 1e-11
  solver.relativeTolerance = 1e-11
  solver.maxSteps = 1e6
  solver.initialStepSize = end * 1e-6
  const { y, outcome } = solver.solve(f, 0, [...y0], end)
  if (outcome !== 0) throw new Error(`the reference integrator ended with outcome ${outcome}`)
  return y
}
