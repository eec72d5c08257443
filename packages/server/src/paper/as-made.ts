import type { AsMade, Drawn, Paper } from '@castwright/engine'
import { pictureOf } from '../picture.ts'
import { ServerProblem } from '../problem.ts'
import { Flow } from './flow.ts'

/** The record of a build on paper: as planned beside as built, step by step, what came otherwise. */
export function asMadePdf(
  record: AsMade,
  drawn: Drawn | null,
  paper: Paper,
  photos: ReadonlyMap<string, Uint8Array> = new Map()
): Uint8Array {
  const flow = new Flow(paper, `${record.name}: as made`, {
    title: `${record.name}: as made`,
    asOf: record.asOf
  })
  flow.titled('As made', record.asOf.slice(0, 10), record.name)
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
    ['Notes', record.notes]
  ] as const) {
    if (lines.length === 0) continue
    flow.heading(title)
    for (const line of lines) flow.say(line, { afterMm: 0.6 })
  }
  if (record.settings.length > 0) {
    flow.heading('Settings')
    flow.table(
      ['', 'as it was set'],
      record.settings.map(s => [s.what, s.says]),
      [1, 2]
    )
  }
  photoPages(flow, record, photos)
  flow.heading('Steps')
  flow.table(
    ['step', ''],
    record.steps.map(s => [s.says, s.when]),
    [1.2, 1]
  )
  return flow.bytes()
}

/** Height of a photo on the page, at the most, mm. */
const PHOTO_MM = 70

// Each with its moment, step and note under it; one that cannot be printed is named all the same.
function photoPages(flow: Flow, { photos }: AsMade, bytes: ReadonlyMap<string, Uint8Array>): void {
  if (photos.length === 0) return
  flow.heading('Photos', PHOTO_MM)
  for (const { photo, says } of photos) {
    const shown = bytes.get(photo)
    const sides = shown === undefined ? null : jpegSides(shown)
    if (shown !== undefined && sides !== null) flow.photo(shown, sides, PHOTO_MM)
    flow.say(sides !== null ? says : `${says} (${photo})`, { size: 'small', afterMm: 3 })
  }
}

// The page takes a JPEG as it is; the library reads other kinds too late (see picture.ts).
function jpegSides(bytes: Uint8Array): readonly [number, number] | null {
  try {
    const { type, width, height } = pictureOf(bytes)
    return type === 'image/jpeg' ? [width, height] : null
  } catch (e) {
    if (e instanceof ServerProblem) return null
    throw e
  }
}
