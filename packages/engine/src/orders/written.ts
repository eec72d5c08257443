import type { Face, StepDocument } from '../piece/piece-schema.ts'
import type { Step } from '../steps/step.ts'
import { otherFace } from '../steps/step.ts'
import { stepDocument } from '../steps/step-document.ts'
import type { Block, Blocks } from './block.ts'
import { fills } from './block.ts'

/** An order written out as the document takes it, with what follows from it. */
export interface Written {
  readonly steps: readonly StepDocument[]
  /** How often the piece is turned over, and how many waits there are. */
  readonly turns: number
  readonly waits: number
}

/**
 * Writes an order out: the piece is turned over where the next step wants the other face up, and what is filled on one
 * face in one go waits once, for the slowest.
 */
export function written(of: Blocks, order: readonly Block[]): Written {
  const body: StepDocument[] = []
  let up: Face | null = of.up
  let turns = 0
  let waits = 0
  order.forEach((block, i) => {
    // Pins are drilled from the face that is worked next.
    const face =
      block.step.kind === 'drill pins'
        ? (order.slice(i).find(b => b.face !== null)?.face ?? null)
        : block.face
    if (face !== null && up !== null && face !== up) {
      body.push({ do: 'turn over' })
      up = otherFace(up)
      turns++
    }
    body.push(stepDocument(block.step))
    const next = order[i + 1]
    if (next !== undefined && inOneGo(block, next)) return
    const group = fills(block.step) ? filledWith(order, i) : [block]
    const longest = joined(group.flatMap(b => (b.waits.length > 0 ? [b.waits] : [])))
    waits += longest.length
    body.push(...longest.map(stepDocument))
  })
  return { steps: [...of.head.map(stepDocument), ...body, ...of.tail.map(stepDocument)], turns, waits }
}

function inOneGo(a: Block, b: Block): boolean {
  return fills(a.step) && fills(b.step) && a.face === b.face
}

// The fillings that are made in one go with this one, which is the last of them.
function filledWith(order: readonly Block[], last: number): Block[] {
  let from = last
  while (from > 0 && inOneGo(order[from - 1]!, order[from]!)) from--
  return order.slice(from, last + 1)
}

// Of waits until something bears one stands for all, of waits of so many minutes the longest.
function joined(lists: readonly (readonly Step[])[]): readonly Step[] {
  const minutes = (list: readonly Step[]) => list.reduce((sum, s) => sum + (s.waitMin ?? 0), 0)
  const untimed = lists.find(list => minutes(list) === 0) ?? []
  const timed = lists.reduce<readonly Step[]>((a, b) => (minutes(b) > minutes(a) ? b : a), [])
  return [...untimed, ...timed]
}
