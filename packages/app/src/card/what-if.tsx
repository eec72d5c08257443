import { useEffect } from 'preact/hooks'
import { decimals } from '../../../engine/src/quantity/format.ts'
import { degreesIn, lengthIn, lengthUnit } from '../../../engine/src/quantity/shown-units.ts'
import { edit, piece, view } from '../state/desk.ts'
import { units } from '../state/preferences.ts'
import { tried, triedSays, triedShare, triedView, tryOut } from '../state/what-if.ts'
import { w } from '../text/words.ts'
import type { LayerView, PlannedView } from '../worker/views.ts'
import { depthPatch } from './depth-patch.ts'
import { Peak } from './peak.tsx'
import { TrySlider } from './try-slider.tsx'

/** How far the room is tried either way, K, and in what steps; steps of a depth, mm. */
const ROOM_K = 10
const STEP = 0.5

/**
 * What a degree of the room or a millimetre of depth would do to a pour: two sliders, and what comes of them. The
 * piece stays as it is until the depth is taken.
 */
export function WhatIf({ l, planned }: { readonly l: LayerView; readonly planned: PlannedView }) {
  const own = tried.value?.pour === l.index ? tried.value : null
  const depth = own?.depthMm ?? l.castMm
  const roomK = own?.roomK ?? 0
  const go = (depthMm: number, k: number) => {
    const same = Math.abs(depthMm - l.castMm) < STEP / 2
    tryOut({ pour: l.index, depthMm: same ? null : Math.round(depthMm * 1000) / 1000, roomK: k })
  }
  // Another plan of the piece (an edit, a better cast, other units): what is tried is tried on that.
  useEffect(() => {
    if (tried.value?.pour === l.index) tryOut(tried.value)
  }, [planned])
  useEffect(() => () => tryOut(null), [])
  const steps = Math.max(1, Math.floor(l.castMm / 2 / STEP))
  const [least, most] = [l.castMm - (steps - 1) * STEP, l.castMm + 2 * steps * STEP]
  const { edge } = l
  return (
    <details
      class="what-if"
      onToggle={e => {
        if (!e.currentTarget.open && own !== null) tryOut(null)
      }}
    >
      <summary>{w.tryOut.head}</summary>
      <TrySlider
        label={w.tryOut.depth}
        says={mm(depth)}
        of={l.name}
        value={depth}
        least={least}
        most={most}
        step={STEP}
        at={l.castMm}
        edge={edge?.depthMm ?? null}
        edgeSays={edge === null ? '' : depthEdge(edge)}
        onTry={to => go(to, roomK)}
      />
      <TrySlider
        label={w.tryOut.room}
        says={room(l.roomC, roomK)}
        of={l.name}
        value={roomK}
        least={-ROOM_K}
        most={ROOM_K}
        step={STEP}
        at={0}
        edge={edge?.roomK ?? null}
        edgeSays={edge === null ? '' : roomEdge(edge)}
        onTry={k => go(depth, k)}
      />
      {edge === null ? null : (
        <p class="f">
          {w.tryOut.slope(
            kelvin(edge.perMm * (units.value.length === 'mm' ? 1 : 25.4 / 16)),
            units.value.length === 'mm' ? '1 mm' : '1/16 in',
            kelvin(edge.perK * (units.value.temperature === '°C' ? 1 : 1 / 1.8)),
            units.value.temperature
          )}
        </p>
      )}
      <Outcome l={l} />
      <p class="ways">
        <button
          type="button"
          class="btn"
          disabled={own?.depthMm == null}
          onClick={() => {
            const at = piece.value
            if (at === null || own?.depthMm == null) return
            const patch = depthPatch(at.document, l.index, own.depthMm)
            tryOut(null)
            edit(w.draw.depthOf(l.name), patch)
          }}
        >
          {w.tryOut.take(mm(depth))}
        </button>
        {own === null ? null : (
          <button type="button" class="link" onClick={() => tryOut(null)}>
            {w.tryOut.back}
          </button>
        )}
      </p>
    </details>
  )
}

// What comes of it: figures as they move, said once they rest.
function Outcome({ l }: { readonly l: LayerView }) {
  const mine = tried.value?.pour === l.index
  const v = mine ? triedView.value : null
  const rests = v !== null && triedShare.value === 1
  const { peak } = v ?? {}
  const says =
    !rests || peak === undefined
      ? ''
      : peak.kind === 'at'
        ? w.tryOut.said(
            degrees(peak.c),
            degrees(peak.lowC),
            peak.highC === null ? w.card.runaway : degrees(peak.highC)
          )
        : peak.kind
  return (
    <div class={`outcome${rests ? '' : ' waits-on'}`}>
      {mine && triedSays.value !== '' ? (
        <p class="says-bad" role="alert">
          {triedSays.value}
        </p>
      ) : null}
      {v === null ? (
        <p class="f">{w.tryOut.how}</p>
      ) : (
        <>
          <p class="tried-peak">
            <span class="q">{w.card.peak}</span> <Peak peak={l.peak} /> <span class="q">{w.tryOut.to}</span>{' '}
            <b>
              <Peak peak={v.peak} />
            </b>{' '}
            <span class="q">{w.tryOut.after(v.peakAfter)}</span>
          </p>
          {v.moved.length === 0 ? null : (
            <dl class="windows moved">
              {v.moved.map(m => (
                <div key={m.label}>
                  <dt>{m.label}</dt>
                  <dd>
                    {m.says}
                    <span class="between">{w.tryOut.was(m.was)}</span>
                  </dd>
                </div>
              ))}
            </dl>
          )}
          <p class="f by">{rests || v.by !== 'whole' ? w.tryOut.by[v.by] : w.tryOut.bandFollows}</p>
        </>
      )}
      <p class="says-core" role="status">
        {says}
      </p>
    </div>
  )
}

/** Whether a try of this pour stands in the place of its curve. */
export function triedCurve(index: number): string | null {
  return tried.value?.pour === index && view.value !== null ? (triedView.value?.curve ?? null) : null
}

function mm(x: number): string {
  return `${lengthIn(units.value, x, 1)} ${lengthUnit(units.value)}`
}

function degrees(c: number): string {
  return `${degreesIn(units.value, c)} ${units.value.temperature}`
}

// A difference of temperatures, in the degrees shown.
function kelvin(k: number): string {
  const shown = units.value.temperature === '°F' ? k * 1.8 : k
  return `${shown < 0 ? '−' : ''}${decimals(Math.abs(shown), 1)} ${units.value.temperature}`
}

function room(meanC: number, k: number): string {
  if (k === 0) return w.tryOut.roomAsIs(degrees(meanC))
  return w.tryOut.roomBy(degrees(meanC + k), kelvin(Math.abs(k)), k > 0)
}

function depthEdge({ depthMm, limitC }: NonNullable<LayerView['edge']>): string {
  if (depthMm === null) return w.tryOut.noDepth(degrees(limitC))
  return depthMm === 0 ? w.tryOut.everyDepth(degrees(limitC)) : w.tryOut.atDepth(degrees(limitC), mm(depthMm))
}

function roomEdge({ roomK, limitC, over }: NonNullable<LayerView['edge']>): string {
  if (roomK === null) return (over ? w.tryOut.everyRoom : w.tryOut.noRoom)(degrees(limitC), kelvin(15))
  return w.tryOut.atRoom(degrees(limitC), kelvin(Math.abs(roomK)), roomK >= 0)
}
