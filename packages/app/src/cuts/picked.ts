import { signal } from '@preact/signals'

/** The program whose way is drawn alone and whose figures stand open, by its file; null: all. */
export const picked = signal<string | null>(null)

/** The finding that is marked on its drawing, by its place among those of the view; null: none. */
export const pickedFinding = signal<number | null>(null)

/** What the drawings of settings show. */
export type Shown = 'ways' | 'cover' | 'off'
export const shown = signal<Shown>('ways')
