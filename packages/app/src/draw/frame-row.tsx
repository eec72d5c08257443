import type { Frame } from '../../../engine/src/draw/frame.ts'
import { mmOf } from '../../../engine/src/draw/shape-place.ts'
import { QuantityField } from '../look/field.tsx'
import { TypedInput } from '../look/typed-input.tsx'
import { piece, view } from '../state/desk.ts'
import { w } from '../text/words.ts'
import { drag } from './drag.ts'
import type { Held } from './held.ts'
import { grip, held, point } from './held.ts'
import { movePart } from './part-drag.ts'
import { addAfter, layPoint, takeOut } from './points.ts'
import { nameOf, workTool } from './tools.ts'

/** Largest place and size a document takes, mm. */
const MOST_MM = 10_000
const LEAST_MM = 0.1
const PLACES = ['x', 'y'] as const
const SIZES = ['widthMm', 'heightMm'] as const

/** The numbers of the part in hand: followed while it is dragged, typed exactly else. */
export function FrameRow({ at }: { readonly at: string }) {
  const now = held.value?.at === at ? held.value : null
  if (now !== null && grip.value === 'points') return <PointNumbers now={now} />
  if (now === null) return <PlaceOnly at={at} />
  const dragged = drag.value?.at === at && drag.value.changes !== 'point' ? drag.value.frame : {}
  const name = nameOf(at)
  const type = (key: keyof Frame, to: number) =>
    void workTool(
      key === 'turnDeg' ? w.turned(name) : PLACES.includes(key as 'x') ? w.moved(name) : w.draw.sized(name),
      {
        tool: 'frame',
        at,
        key,
        to
      }
    )
  const round = now.shape.circle !== undefined
  return (
    <div class="frame-row" role="group" aria-label={w.draw.numbers(name)}>
      {PLACES.map(key => (
        <Length
          key={key}
          words={w.draw.frame[key]}
          value={dragged[key] ?? now.frame[key]}
          onType={mm => type(key, mm)}
        />
      ))}
      {SIZES.slice(0, round ? 1 : 2).map(key => (
        <Length
          key={key}
          words={round ? w.draw.frame.across : w.draw.frame[key]}
          value={dragged[key] ?? now.frame[key]}
          least={LEAST_MM}
          onType={mm => type(key, mm)}
        />
      ))}
      {round ? null : (
        <Angle value={dragged.turnDeg ?? now.frame.turnDeg} onType={deg => type('turnDeg', deg)} />
      )}
    </div>
  )
}

function PointNumbers({ now }: { readonly now: Held }) {
  const own = point.value
  const v = now.vertices.find(p => p.ring === own?.ring && p.index === own.index)
  if (v === undefined) return <p class="f frame-row">{w.draw.pickPoint}</p>
  const dragged = drag.value?.changes === 'point' ? drag.value.frame : {}
  return (
    <div class="frame-row" role="group" aria-label={w.draw.pointOf(v.index + 1)}>
      <span class="f">{w.draw.pointOf(v.index + 1)}</span>
      <Length words="x" value={dragged.x ?? v.x} onType={x => void layPoint(now, v, [x, v.y])} />
      <Length words="y" value={dragged.y ?? v.y} onType={y => void layPoint(now, v, [v.x, y])} />
      <button type="button" class="link" onClick={() => void addAfter(now, v)}>
        {w.draw.addPoint}
      </button>
      <button type="button" class="link" onClick={() => void takeOut(now, v)}>
        {w.draw.takePoint}
      </button>
    </div>
  )
}

// Hardware has a place alone: its sizes stand in its entry.
function PlaceOnly({ at }: { readonly at: string }) {
  const own = view.value?.parts.find(p => p.at === at)
  const entry = piece.value?.document
  if (own === undefined || entry === undefined) return null
  const name = nameOf(at)
  const dragged = drag.value?.at === at ? drag.value.frame : {}
  return (
    <div class="frame-row" role="group" aria-label={w.draw.numbers(name)}>
      <Length words="x" value={dragged.x ?? own.x} onType={x => void movePart(at, name, x - own.x, 0)} />
      <Length words="y" value={dragged.y ?? own.y} onType={y => void movePart(at, name, 0, y - own.y)} />
    </div>
  )
}

function Length(p: {
  readonly words: string
  readonly value: number
  readonly least?: number
  readonly onType: (mm: number) => void
}) {
  return (
    <label class="pair">
      <span class="q">{p.words}</span>
      <QuantityField
        label={p.words}
        value={Math.round(p.value * 1000) / 1000 + 0}
        dimension="length"
        min={p.least ?? -MOST_MM}
        max={MOST_MM}
        onChange={stored => {
          if (stored !== undefined) p.onType(mmOf(stored))
        }}
      />
    </label>
  )
}

function Angle({ value, onType }: { readonly value: number; readonly onType: (deg: number) => void }) {
  const shown = String(Math.round(value * 1000) / 1000 + 0)
  const commit = (text: string) => {
    const deg = Number(text.replace('−', '-').replace(',', '.'))
    if (text.trim() !== '' && text !== shown && Number.isFinite(deg) && Math.abs(deg) <= 360) onType(deg)
    return undefined
  }
  return (
    <label class="pair">
      <span class="q">{w.draw.frame.turnDeg}</span>
      <span class="qf">
        <TypedInput type="text" look="" label={w.draw.frame.turnDeg} shown={shown} onCommit={commit} />
        <u>°</u>
      </span>
    </label>
  )
}
