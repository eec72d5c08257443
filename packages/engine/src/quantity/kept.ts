const MOST_KEPT = 48

/**
 * The last few answers of something that takes long, by what they were made from: a plan is made anew with every edit
 * of a piece, and the resins of its shop and its drawings stay as they are. The same input gives the same answer with
 * or without; an answer is shared, so it must never be changed. At most `most` are held.
 */
export function kept<T>(made: Map<string, T>, key: string, make: () => T, most = MOST_KEPT): T {
  const known = made.get(key)
  if (known !== undefined) return known
  const fresh = make()
  if (made.size >= most) made.delete(made.keys().next().value!)
  made.set(key, fresh)
  return fresh
}

/** The same for what was made of one thing, kept as long as that thing is: regions never change. */
export function keptOf<T>(
  made: WeakMap<object, Map<string, T>>,
  of: object,
  key: string,
  make: () => T,
  most = MOST_KEPT
): T {
  let own = made.get(of)
  if (own === undefined) {
    own = new Map()
    made.set(of, own)
  }
  return kept(own, key, make, most)
}
