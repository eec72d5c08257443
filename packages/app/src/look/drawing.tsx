import type { ComponentChildren } from 'preact'
import type { Drawn } from '../worker/views.ts'

/**
 * A drawing of the engine as an element: its marks are text that the engine wrote and escaped. A drawing's
 * millimetre is a quarter rem, never wider than its place.
 */
export function Drawing(p: {
  readonly drawn: Drawn
  readonly name: string
  readonly words: string | null
  readonly children?: ComponentChildren
}) {
  const { widthMm, heightMm, body } = p.drawn
  const h = Math.round(heightMm * 100) / 100
  // A drawing with things to take hold of is a group of them; its marks say nothing by themselves.
  const aria =
    p.children !== undefined
      ? { role: 'group' as const, 'aria-label': p.words ?? undefined }
      : p.words === null
        ? { 'aria-hidden': 'true' as const }
        : { role: 'img' as const, 'aria-label': p.words }
  return (
    <svg
      class={`draw ${p.name}`}
      viewBox={`0 0 ${widthMm} ${h}`}
      width={rem(widthMm)}
      height={rem(heightMm)}
      {...aria}
    >
      <g
        aria-hidden={p.children === undefined ? undefined : 'true'}
        dangerouslySetInnerHTML={{ __html: body }}
      />
      {p.children}
    </svg>
  )
}

function rem(mm: number): string {
  return `${Number((mm / 4).toFixed(3))}rem`
}

/** Markup that the engine wrote and escaped: tables, curves. */
export function Written({ markup, name }: { readonly markup: string; readonly name?: string }) {
  return markup === '' ? null : <div class={name} dangerouslySetInnerHTML={{ __html: markup }} />
}
