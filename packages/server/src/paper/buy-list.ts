import type { BuySheet, Paper } from '@castwright/engine'
import { Flow } from './flow.ts'

/** The buy list on paper: a box to tick before each thing, what has to be ordered first, and by when. */
export function buyListPdf(list: BuySheet, paper: Paper): Uint8Array {
  const title = `${list.name}: buy list`
  const flow = new Flow(paper, title, { title, asOf: list.asOf })
  flow.titled('Buy list', list.asOf.slice(0, 10), list.name)
  flow.say(list.sum)
  if (list.order.length > 0) {
    flow.heading('To be ordered by')
    flow.table(
      ['by', 'what'],
      list.order.map(o => [o.by, o.what]),
      [1, 4]
    )
  }
  for (const { title: head, items } of list.groups) {
    flow.heading(head)
    for (const { what, says, notes } of items) {
      flow.room(12)
      flow.tick(says, { lead: what, afterMm: notes.length === 0 ? 1.8 : 0.3 })
      for (const [k, note] of notes.entries())
        flow.say(note, {
          size: 'small',
          tone: 'grey',
          indentMm: 6,
          afterMm: k === notes.length - 1 ? 1.8 : 0.2
        })
    }
  }
  if (list.there.length > 0) {
    flow.heading('On the shelf already')
    for (const line of list.there) flow.item(line, { afterMm: 0.6 })
  }
  return flow.bytes()
}
