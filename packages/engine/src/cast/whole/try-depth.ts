import type { Stack } from '../../stack/stack.ts'

/**
 * The stack as it would stand in its mould with one pour so many times as deep, and nothing after it: timber that the
 * pour covers or leaves bare is where it is.
 */
export function tryDepth(stack: Stack, index: number, times: number): Stack {
  const at = stack.events.findIndex(e => e.kind === 'pour' && e.index === index)
  const event = stack.events[at]
  if (event?.kind !== 'pour') throw new Error(`pour ${index} is not poured into the mould`)
  const own = stack.pours[index]!
  const level = own.floor + own.depth * times
  const before = stack.events.slice(0, at)
  return {
    ...stack,
    events: [...before, { ...event, to: level }],
    pours: stack.pours.map((p, i) => {
      if (i === index) return { ...p, level, depth: p.depth * times, liquidDepth: p.liquidDepth * times }
      return before.some(e => e.kind === 'pour' && e.index === i) ? p : { ...p, liquidDepth: 0 }
    })
  }
}
