import { latePart } from '../late/part.tsx'

/** The fields of an entry, loaded once they are first shown: a first verdict does without. */
export const EntryEditor = latePart(async () => (await import('./entry-editor.tsx')).EntryEditor)
