import { signal } from '@preact/signals'

/** The program whose way is drawn alone and whose figures stand open, by its file; null: all. */
export const picked = signal<string | null>(null)
