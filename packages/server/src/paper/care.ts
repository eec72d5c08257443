import type { Care, Drawn, Paper } from '@castwright/engine'
import { Flow } from './flow.ts'

/** The care sheet on paper: for whoever lives with the piece. */
export function carePdf(care: Care, drawn: Drawn | null, paper: Paper): Uint8Array {
  const flow = new Flow(paper, `${care.name}: care`, { title: `${care.name}: care`, asOf: care.asOf })
  flow.titled('Care', care.asOf.slice(0, 10), care.name)
  if (care.about !== null) flow.say(care.about, { tone: 'grey' })
  if (drawn !== null) {
    flow.gap(2)
    flow.figure(drawn.front, { pictures: drawn.pictures })
  }
  for (const line of care.madeOf) flow.say(line, { afterMm: 0.6 })
  for (const { title, lines } of care.sections) {
    flow.heading(title)
    for (const { says, basis } of lines) {
      flow.say(says, { afterMm: 0.2 })
      flow.say(`Basis: ${basis}.`, { size: 'small', tone: 'grey', afterMm: 1.6 })
    }
  }
  flow.gap(2)
  flow.say(care.closing, { size: 'small', tone: 'grey' })
  return flow.bytes()
}
