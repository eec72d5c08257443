import type { AsMade, Drawn, Paper } from '@castwright/engine'
import { Flow } from './flow.ts'

/** The record of a build on paper: as planned beside as built, step by step, what came otherwise. */
export function asMadePdf(record: AsMade, drawn: Drawn | null, paper: Paper): Uint8Array {
  const flow = new Flow(paper, `${record.name}: as made`, {
    title: `${record.name}: as made`,
    asOf: record.asOf
  })
  flow.ends('As made', record.asOf.slice(0, 10), { strong: true })
  flow.say(record.name, { size: 'title', strong: true, afterMm: 1.5 })
  flow.say(record.says)
  if (drawn !== null) flow.figure(drawn.front, { pictures: drawn.pictures })
  for (const [title, entries] of [
    ['Timber', record.timbers],
    ['Pours', record.pours]
  ] as const) {
    if (entries.length === 0) continue
    flow.heading(title)
    for (const { name, figures } of entries) {
      flow.room(24)
      flow.say(name, { strong: true, afterMm: 0.5 })
      flow.table(
        ['', 'as planned', 'as built'],
        figures.map(f => [f.what, f.planned, f.built ?? 'not read']),
        [1, 2, 2]
      )
    }
  }
  for (const [title, lines] of [
    ['Otherwise than planned', record.changed],
    ['Readings that do not go together', record.odd],
    ['Notes', record.notes],
    ['Photos', record.photos]
  ] as const) {
    if (lines.length === 0) continue
    flow.heading(title)
    for (const line of lines) flow.say(line, { afterMm: 0.6 })
  }
  flow.heading('Steps')
  flow.table(
    ['step', ''],
    record.steps.map(s => [s.says, s.when]),
    [1.2, 1]
  )
  return flow.bytes()
}
