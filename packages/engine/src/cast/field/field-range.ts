import { inRange } from '../../quantity/range.ts'
import type { FieldProblem } from './field-problem.ts'

/** Throws where a number of a problem is out of range. */
export function checkRanges(problem: FieldProblem): void {
  inRange('columns along x', problem.nx, 1, 4000)
  inRange('columns along y', problem.ny, 1, 4000)
  inRange('layers of cells', problem.dzM.length, 1, 1000)
  inRange('width of a cell in m', problem.dxM, 1e-5, 10)
  inRange('width of a cell in m', problem.dyM, 1e-5, 10)
  for (const h of problem.dzM) inRange('height of a cell in m', h, 1e-6, 10)
  inRange('length of the run in s', problem.untilS, 1e-3, 1e9)
  for (const film of Object.values(problem.films)) inRange('film coefficient in W/(m²·K)', film, 0, 1e9)
  for (const m of problem.materials) {
    inRange('start temperature in °C', m.startC, -60, 400)
    if (m.kind === 'inert') {
      inRange('conductivity in W/(m·K)', m.kWmK, 1e-6, 1e6)
      inRange('heat capacity in J/(m³·K)', m.rhoCpJm3K, 1, 1e9)
    } else {
      inRange('start conversion', m.startConversion ?? 0, 0, 1)
      inRange('rate factor', m.rateFactor ?? 1, 1e-6, 1e6)
      inRange('liquid multiplier', m.liquidMultiplier ?? 1, 1, 100)
      inRange('moment of a pour in s', m.atS, 0, problem.untilS)
    }
  }
}
