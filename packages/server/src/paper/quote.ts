import type { Drawn, Paper, QuotePart } from '@castwright/engine'
import { Flow } from './flow.ts'
import type { PrintedOptions } from './printed.ts'

/** A quote on paper: the piece drawn, then each part under its head. */
export function quotePdf(
  name: string,
  kind: string,
  parts: readonly QuotePart[],
  drawn: Drawn | null,
  paper: Paper,
  asOf: PrintedOptions['asOf']
): Uint8Array {
  const flow = new Flow(paper, `${name}: ${kind}`, { title: `${name}: ${kind}`, asOf })
  flow.titled(kind.slice(0, 1).toUpperCase() + kind.slice(1), asOf.slice(0, 10), name)
  if (drawn !== null) flow.figure(drawn.front, { pictures: drawn.pictures })
  for (const { head, rows } of parts) {
    flow.heading(head)
    // What is paid in the end is what is looked for.
    for (const row of rows)
      flow.say(row, { afterMm: 0.8, strong: row.startsWith('Price to the client with tax') })
  }
  return flow.bytes()
}
