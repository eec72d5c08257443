import type { Placement } from './placed.ts'
import { placed } from './placed.ts'
import type { Box, ProgramInput } from './program.ts'

/**
 * A program turned and shifted to where the piece was found to lie: its paths, the places it stops at, and the box of
 * what lies on the bed, which grows to hold the turned one. Heights stay.
 */
export function placedProgram(program: ProgramInput, placement: Placement): ProgramInput {
  const { turnDeg, shiftX, shiftY } = placement
  if (turnDeg === 0 && shiftX === 0 && shiftY === 0) return program
  // A frame is a placement and more: the numbers alone go on.
  const by: Placement = { turnDeg, shiftX, shiftY }
  const at = <P extends { readonly x: number; readonly y: number }>(p: P): P => ({
    ...p,
    ...pointPlaced(by, p.x, p.y)
  })
  return {
    ...program,
    stock: boxPlaced(program.stock, by),
    checkAt: at(program.checkAt),
    visits: program.visits.map(at),
    runs: program.runs.map(run => ({
      ...run,
      parts: run.parts.map(part => ({ ...part, path: placed(part.path, by) }))
    }))
  }
}

function pointPlaced(placement: Placement, x: number, y: number): { x: number; y: number } {
  const path = placed({ moves: [{ kind: 'rapid', x, y, z: 0 }], passes: [] }, placement)
  const [move] = path.moves
  if (move === undefined || move.kind === 'dwell') throw new Error('a place without a move')
  return { x: move.x, y: move.y }
}

function boxPlaced(box: Box, placement: Placement): Box {
  const corners = [
    pointPlaced(placement, box.minX, box.minY),
    pointPlaced(placement, box.maxX, box.minY),
    pointPlaced(placement, box.maxX, box.maxY),
    pointPlaced(placement, box.minX, box.maxY)
  ]
  const x = corners.map(c => c.x)
  const y = corners.map(c => c.y)
  return {
    ...box,
    minX: Math.min(...x),
    maxX: Math.max(...x),
    minY: Math.min(...y),
    maxY: Math.max(...y)
  }
}
