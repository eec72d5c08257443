/** A document as it stands in its file: plain JSON. */
export type Json = Record<string, unknown>
