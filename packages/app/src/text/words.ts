import { en } from './en.ts'

/** All words of the screens. Another language is a table of the same shape. */
export type Words = typeof en

/** The words in use. */
export const w: Words = en
