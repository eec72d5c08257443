import type { QuotePart } from '@castwright/engine'

/** A quote as text: its title, then each part under its head. */
export function quoteReport(title: string, parts: readonly QuotePart[]): string {
  const rows = parts.flatMap(p => ['', p.head, ...p.rows.map(r => `  ${r}`)])
  return `${[title, ...rows].join('\n')}\n`
}
