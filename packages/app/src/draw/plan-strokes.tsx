import { useRef, useState } from 'preact/hooks'
import type { Bounds } from '../../../engine/src/shape/region.ts'
import type { PageView } from '../../../engine/src/sheets/page-data.ts'
import { startedEntry } from '../card/add-entry.tsx'
import { addPatch, entriesOf, timberLike } from '../card/new-entry.ts'
import { eventPlace, pointer, tenth, toSheet } from '../sheet/place.ts'
import { chosen, edit, piece } from '../state/desk.ts'
import { w } from '../text/words.ts'
import type { Json } from '../worker/document.ts'
import { askTool, mode, toolSays, workTool } from './tools.ts'

type Pair = readonly [number, number]

/** Points of a stroke nearer than this are one, mm; a press that moves less is a single point. */
const NEAR_MM = 0.4

/** Takes presses and strokes on the plan while something is being drawn or placed. */
export function PlanStrokes(p: {
  readonly view: PageView
  readonly box: Bounds
  readonly x: number
  readonly y: number
}) {
  const m = mode.value
  const [stroke, setStroke] = useState<readonly Pair[]>([])
  const down = useRef(false)
  if (m.kind === 'rest') return null
  const { view } = p
  const at = (e: PointerEvent): Pair | null => {
    const svg = (e.currentTarget as SVGElement).ownerSVGElement
    const to = svg === null ? null : eventPlace(svg, view, e)
    return to === null ? null : [tenth(to[0]), tenth(to[1])]
  }
  const line = m.kind === 'edge' ? [...m.line, ...stroke] : stroke
  const end = async () => {
    if (m.kind === 'place') return place(m.what, [p.x, p.y])
    await endLine(m.line, m.top, p.box)
  }
  return (
    <g class="strokes">
      <rect
        class="catch"
        x={0}
        y={0}
        width={view.widthMm}
        height={view.heightMm}
        tabindex={0}
        role="button"
        aria-label={m.kind === 'place' ? w.draw.press(w.draw.ones[m.what]) : w.draw.edgeTop}
        ref={el => el?.focus({ preventScroll: true })}
        onPointerDown={e => {
          const to = at(e)
          if (to === null) return
          e.stopPropagation()
          if (m.kind === 'place') {
            place(m.what, to)
            return
          }
          down.current = true
          ;(e.currentTarget as Element).setPointerCapture(e.pointerId)
          setStroke([to])
        }}
        onPointerMove={e => {
          if (!down.current) return
          e.stopPropagation()
          const to = at(e)
          const last = stroke.at(-1)
          if (to !== null && (last === undefined || Math.hypot(to[0] - last[0], to[1] - last[1]) > NEAR_MM))
            setStroke([...stroke, to])
        }}
        onPointerUp={async () => {
          if (!down.current || m.kind !== 'edge') return
          down.current = false
          const drawn = stroke
          setStroke([])
          // A single press is a point; a stroke is made a tidy line.
          if (drawn.length < 4) mode.value = { ...m, line: [...m.line, drawn[0]!] }
          else {
            const got = await askTool({ tool: 'stroke', stroke: drawn })
            toolSays.value = got?.problem ?? ''
            if (got?.points !== undefined) mode.value = { ...m, line: [...m.line, ...got.points] }
          }
        }}
        onKeyDown={e => {
          if (e.key === 'Enter') void end()
          else if (e.key === ' ' && m.kind === 'edge')
            mode.value = { ...m, line: [...m.line, [tenth(p.x), tenth(p.y)]] }
          else if (e.key === 'Backspace' && m.kind === 'edge')
            mode.value = { ...m, line: m.line.slice(0, -1) }
          else return
          e.preventDefault()
          e.stopPropagation()
        }}
      />
      {m.kind === 'edge' && m.top !== null ? (
        <polyline class="drawn first" points={sheetPoints(view, m.top)} />
      ) : null}
      {line.length === 0 ? null : <polyline class="drawn" points={sheetPoints(view, line)} />}
      {m.kind === 'edge'
        ? m.line.map(([x, y]) => {
            const [sx, sy] = toSheet(view, x, y)
            return <circle key={`${x} ${y}`} class="drawn-point" cx={sx} cy={sy} r={0.7} />
          })
        : null}
    </g>
  )
}

function sheetPoints(view: PageView, line: readonly Pair[]): string {
  return line
    .map(([x, y]) =>
      toSheet(view, x, y)
        .map(c => c.toFixed(2))
        .join(',')
    )
    .join(' ')
}

/** Ends the line drawn: the upper one first, then the lower one, which makes the timber. */
export async function endLine(
  line: readonly Pair[],
  top: readonly Pair[] | null,
  box: Bounds
): Promise<void> {
  if (top === null) {
    if (line.length < 2) return
    mode.value = { kind: 'edge', top: line, line: [] }
    return
  }
  const document = piece.value?.document
  if (document === undefined) return
  const done = await workTool(w.draw.edged, {
    tool: 'live edge',
    top,
    bottom: line.length < 2 ? top : line,
    back: backOf(top, box),
    ...timberLike(document)
  })
  if (!done) return
  mode.value = { kind: 'rest' }
  chosen.value = `/timbers/${entriesOf(piece.value!.document, 'timbers').length - 1}`
}

/** How far a board reaches over the outline, mm: what is trimmed with the waste. */
const OVER_MM = 3

// The straight back of the board: along the side of the piece that the edge lies nearer to.
function backOf(line: readonly Pair[], box: Bounds): readonly [Pair, Pair] {
  const xs = line.map(p => p[0])
  const ys = line.map(p => p[1])
  const wide = Math.max(...xs) - Math.min(...xs) >= Math.max(...ys) - Math.min(...ys)
  const [ax, ay] = line[0]!
  const [bx, by] = line.at(-1)!
  const mean = (list: readonly number[]) => list.reduce((a, b) => a + b, 0) / list.length
  if (wide) {
    const y = mean(ys) > (box.minY + box.maxY) / 2 ? box.maxY + OVER_MM : box.minY - OVER_MM
    return [
      [ax, y],
      [bx, y]
    ]
  }
  const x = mean(xs) > (box.minX + box.maxX) / 2 ? box.maxX + OVER_MM : box.minX - OVER_MM
  return [
    [x, ay],
    [x, by]
  ]
}

function place(what: 'timbers' | 'cuts' | 'hardware' | 'markings' | 'stones', at: Pair): void {
  const document = piece.value?.document
  if (document === undefined) return
  mode.value = { kind: 'rest' }
  // The core shows at once what lies there.
  pointer.value = at
  if (what === 'stones') {
    placeStone(document, at)
    return
  }
  const value = startedEntry(document, what, [tenth(at[0]), tenth(at[1])])
  edit(w.added(w.card.one[what]), addPatch(document, what, value))
  chosen.value = `/${what}/${entriesOf(document, what).length}`
}

/** A stone placed by hand: a river pebble of a usual size, to be measured. Length, width, thickness, mm. */
const STONE_MM = [22, 18, 8]

// Stones belong to a pour: the first that is cast, unless one is in hand.
function placeStone(document: Json, at: Pair): void {
  const pours = entriesOf(document, 'pours')
  const chosenPour = /^\/pours\/(\d+)$/.exec(chosen.value ?? '')
  const i =
    chosenPour === null
      ? pours.findIndex(p => p['kind'] === undefined || p['kind'] === 'cast')
      : Number(chosenPour[1])
  if (i < 0) return
  const stones = pours[i]!['stones'] as Json[] | undefined
  const stone = { at: [tenth(at[0]), tenth(at[1])], size: STONE_MM }
  const k = stones?.findIndex(s => s['placed'] !== undefined) ?? -1
  edit(w.added(w.card.addStones), [
    k >= 0
      ? { op: 'add', path: `/pours/${i}/stones/${k}/placed/-`, value: stone }
      : stones === undefined
        ? { op: 'add', path: `/pours/${i}/stones`, value: [{ kind: 'river-gravel', placed: [stone] }] }
        : { op: 'add', path: `/pours/${i}/stones/-`, value: { kind: 'river-gravel', placed: [stone] } }
  ])
  chosen.value = `/pours/${i}`
}
