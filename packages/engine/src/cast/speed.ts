/**
 * How fast a pour's resin is taken to be against its record: a factor on both rate constants.
 *
 * What a label or a cup test say is in the record already (own-resin.ts), so that the factor is 1 until
 * something seen of the pour itself says otherwise.
 */
export interface Speed {
  readonly factor: number
}

/** The speed of a pour of which nothing has been seen. */
export const AS_RECORDED: Speed = { factor: 1 }
