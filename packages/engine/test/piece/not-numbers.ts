/** Places of a plan where a number is not one; JSON Pointer like. Functions and cycles are no plain data. */
export function notNumbers(value: unknown, path = ''): string[] {
  if (typeof value === 'number') return Number.isFinite(value) ? [] : [`${path} ${value}`]
  if (typeof value === 'string') {
    return /\bNaN\b|\bInfinity\b|undefined|\[object/.test(value) ? [`${path} "${value.slice(0, 160)}"`] : []
  }
  if (value === null || typeof value !== 'object') return []
  return Object.entries(value).flatMap(([k, v]) => notNumbers(v, `${path}/${k}`))
}
