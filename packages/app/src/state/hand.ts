import { signal } from '@preact/signals'

/** Whether a hand holds something on the sheet: until it lets go, nothing is drawn anew under it. */
export const handHolds = signal(false)
