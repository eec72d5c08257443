/** What stands at a JSON Pointer of a document; undefined for nothing. */
export function at(document: unknown, pointer: string): unknown {
  let value = document
  for (const token of pointer.split('/').slice(1)) {
    if (value === null || typeof value !== 'object') return undefined
    value = (value as Record<string, unknown>)[token.replaceAll('~1', '/').replaceAll('~0', '~')]
  }
  return value
}
