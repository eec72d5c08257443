import { useEffect, useState } from 'preact/hooks'
import { bounds } from '../../../engine/src/shape/measure.ts'
import { ownLine } from '../sheet/place.ts'
import { chosen, view } from '../state/desk.ts'
import { w } from '../text/words.ts'
import { FrameRow } from './frame-row.tsx'
import { grip, held } from './held.ts'
import { partBoxes } from './plan-scene.ts'
import { endLine } from './plan-strokes.tsx'
import { ReadDrawing } from './read-drawing.tsx'
import type { Mode } from './tools.ts'
import { copyEntry, mode, nameOf, pasteEntry, removeEntry, toolSays, workTool } from './tools.ts'

/** Words over the plan: what can be done with the part in hand, or laid on the sheet. */
export function ToolRow() {
  const at = chosen.value
  const part = at !== null && /^\/(timbers|cuts|hardware|markings|pours)\/\d+$/.test(at) ? at : null
  useEffect(() => {
    const keys = (e: KeyboardEvent) => {
      if (e.target instanceof HTMLElement && e.target.matches('input, textarea, select')) return
      if (e.key === 'Escape') {
        if (mode.value.kind !== 'rest') mode.value = { kind: 'rest' }
        else chosen.value = null
      }
      if (!(e.ctrlKey || e.metaKey) || e.altKey || e.shiftKey) return
      if (e.key === 'c' && part !== null && getSelection()?.isCollapsed !== false) void copyEntry(part)
      if (e.key === 'v') void pasteEntry()
    }
    addEventListener('keydown', keys)
    return () => removeEventListener('keydown', keys)
  }, [part])
  return (
    <div class="tools-row" role="toolbar" aria-label={w.draw.row}>
      {mode.value.kind !== 'rest' ? (
        <ModeWords />
      ) : part === null ? (
        <LayTools />
      ) : (
        <PartTools key={part} at={part} />
      )}
      <p class="f tool-says" role="status">
        {toolSays.value}
      </p>
    </div>
  )
}

function ModeWords() {
  const m = mode.value
  if (m.kind === 'rest') return null
  const words =
    m.kind === 'place'
      ? w.draw.press(w.draw.ones[m.what])
      : m.top === null
        ? w.draw.edgeTop
        : w.draw.edgeBottom
  return (
    <>
      <span class="f">{words}</span>
      {m.kind === 'edge' ? <LineTools m={m} /> : null}
      <button type="button" class="link" onClick={() => (mode.value = { kind: 'rest' })}>
        {w.card.close}
      </button>
    </>
  )
}

// What Enter and Backspace do, for hands without keys.
function LineTools({ m }: { readonly m: Extract<Mode, { kind: 'edge' }> }) {
  const box = view.value?.model.geometry.outline
  return (
    <>
      <button
        type="button"
        class="link"
        disabled={m.top === null && m.line.length < 2}
        onClick={() => {
          if (box !== undefined) void endLine(m.line, m.top, bounds(box))
        }}
      >
        {w.draw.endLine}
      </button>
      <button
        type="button"
        class="link"
        disabled={m.line.length === 0}
        onClick={() => (mode.value = { ...m, line: m.line.slice(0, -1) })}
      >
        {w.draw.takeBack}
      </button>
    </>
  )
}

function LayTools() {
  return (
    <>
      <button type="button" class="link" onClick={() => (mode.value = { kind: 'edge', top: null, line: [] })}>
        {w.draw.edge}
      </button>
      <ReadDrawing />
      <button type="button" class="link" onClick={() => void pasteEntry()}>
        {w.draw.paste}
      </button>
      <span class="of" role="group" aria-label={w.draw.place}>
        <span class="q">{w.draw.place}</span>
        {(['timbers', 'cuts', 'hardware', 'markings', 'stones'] as const).map(what => (
          <button
            key={what}
            type="button"
            class="link"
            onClick={() => (mode.value = { kind: 'place', what })}
          >
            {w.draw.ones[what]}
          </button>
        ))}
      </span>
    </>
  )
}

function PartTools({ at }: { readonly at: string }) {
  const [deg, setDeg] = useState('90')
  const v = view.value
  if (v === null) return null
  const list = at.split('/')[1]!
  const name = nameOf(at)
  const b = bounds(v.model.geometry.outline)
  const [cx, cy] = [(b.minX + b.maxX) / 2, (b.minY + b.maxY) / 2]
  const own = /^(timbers|cuts)$/.test(list) ? (partBoxes(v).get(at) ?? null) : null
  const about =
    own === null ? ([cx, cy] as const) : ([(own.minX + own.maxX) / 2, (own.minY + own.maxY) / 2] as const)
  const path = ownLine.value ?? v.section.path
  const leg = path.legs[0]!
  const line =
    path.along === 'x'
      ? ([
          [leg.from, leg.at],
          [leg.to, leg.at]
        ] as const)
      : ([
          [leg.at, leg.from],
          [leg.at, leg.to]
        ] as const)
  return (
    <>
      <b>{name}</b>
      {held.value?.at !== at ? null : (
        <>
          <span class="pair">
            <button
              type="button"
              class="link"
              onClick={() => void workTool(w.turned(name), { tool: 'turn', at, deg: Number(deg), about })}
            >
              {w.draw.turn}
            </button>
            <input
              type="number"
              class="number short"
              aria-label={`${w.draw.turn}, ${w.draw.turnBy}`}
              value={deg}
              step="any"
              min={-360}
              max={360}
              onInput={e => setDeg(e.currentTarget.value)}
            />
            <u>°</u>
          </span>
          <button
            type="button"
            class="link"
            onClick={() =>
              void workTool(w.draw.mirrored(name), {
                tool: 'mirror',
                at,
                axis: 'x',
                c: about[0],
                copy: false
              })
            }
          >
            {w.draw.mirror}
          </button>
          <button
            type="button"
            class="link"
            onClick={() =>
              void workTool(w.draw.mirrored(name), {
                tool: 'mirror',
                at,
                axis: 'y',
                c: about[1],
                copy: false
              })
            }
          >
            {w.draw.mirrorUp}
          </button>
        </>
      )}
      {list === 'timbers' ? (
        <>
          <button
            type="button"
            class="link"
            onClick={() =>
              void workTool(w.draw.mirrored(name), {
                tool: 'mirror',
                at,
                axis: Math.abs(about[0] - cx) >= Math.abs(about[1] - cy) ? 'x' : 'y',
                c: Math.abs(about[0] - cx) >= Math.abs(about[1] - cy) ? cx : cy,
                copy: true
              })
            }
          >
            {w.draw.twin}
          </button>
          <button
            type="button"
            class="link"
            onClick={() => void workTool(w.draw.parted(name), { tool: 'split', at, line })}
          >
            {w.draw.split}
          </button>
        </>
      ) : null}
      {held.value?.at === at && held.value.vertices.length > 0 ? (
        <button
          type="button"
          class="link"
          aria-pressed={grip.value === 'points'}
          onClick={() => (grip.value = grip.value === 'points' ? 'size' : 'points')}
        >
          {w.draw.points}
        </button>
      ) : null}
      <button type="button" class="link" onClick={() => void copyEntry(at)}>
        {w.draw.copy}
      </button>
      <button type="button" class="link" onClick={() => void pasteEntry()}>
        {w.draw.paste}
      </button>
      <button type="button" class="link" onClick={() => removeEntry(at)}>
        {w.draw.remove}
      </button>
      <FrameRow at={at} />
    </>
  )
}
