import { useState } from 'preact/hooks'
import { mmOf } from '../../../engine/src/draw/shape-place.ts'
import { lengthIn, lengthUnit } from '../../../engine/src/quantity/shown-units.ts'
import { followHand } from '../draw/drag.ts'
import { edit, piece } from '../state/desk.ts'
import { units } from '../state/preferences.ts'
import { w } from '../text/words.ts'
import type { Json } from '../worker/document.ts'
import type { Drawn, PlannedView } from '../worker/views.ts'

/** Steps of a height dragged in the section, mm. */
const STEP_MM = 0.5
/** Foot of the section on its sheet, mm: below it stand the lengths. */
const FOOT_MM = 10.5

/**
 * The upper faces of pours that are given by depth or height, in the section: dragged or moved by arrow keys they
 * change that number. Drawn over the section; heights are true or stretched as it is.
 */
export function SectionHeights(p: {
  readonly view: PlannedView
  readonly drawn: Drawn
  readonly scale: number
  readonly stretch: number
  readonly from: number
  readonly to: number
}) {
  const document = piece.value?.document
  if (document === undefined) return null
  const pours = (document['pours'] ?? []) as Json[]
  const { model } = p.view
  const up = model.down === 'back'
  return (
    <g class="heights">
      {p.view.layers.flatMap(l => {
        const key = pours[l.index]?.['height'] === undefined ? 'depth' : 'height'
        const typed = pours[l.index]?.[key] as number | string | undefined
        const z = l.levelMm
        if (
          typed === undefined ||
          z === null ||
          z >= model.finishedHigh - 0.2 ||
          z <= model.finishedLow + 0.2
        )
          return []
        const above = up ? z - model.finishedLow : model.finishedHigh - z
        const y = p.drawn.heightMm - FOOT_MM - above * p.scale * p.stretch
        return [
          <Level
            key={l.index}
            name={l.name}
            y={y}
            x0={p.from}
            x1={p.to}
            perMm={(up ? 1 : -1) * p.scale * p.stretch}
            given={key}
            depth={mmOf(typed)}
            index={l.index}
          />
        ]
      })}
    </g>
  )
}

function Level(p: {
  readonly name: string
  readonly y: number
  readonly x0: number
  readonly x1: number
  readonly perMm: number
  readonly given: 'depth' | 'height'
  readonly depth: number
  readonly index: number
}) {
  const [by, setBy] = useState<number | null>(null)
  const lay = (depth: number) => {
    const to = Math.max(STEP_MM, Math.round(depth * 1000) / 1000)
    if (to !== p.depth)
      edit(p.given === 'depth' ? w.draw.depthOf(p.name) : w.draw.heightOf(p.name), [
        { op: 'replace', path: `/pours/${p.index}/${p.given}`, value: to }
      ])
  }
  const follow = (on: SVGGElement, e: PointerEvent) => {
    const matrix = on.ownerSVGElement?.getScreenCTM()
    if (!matrix || e.button !== 0) return
    // Whole steps, counted from what stands there: 18.2 mm goes to 18.7.
    const stepsOf = (m: PointerEvent) => {
      const mm = (e.clientY - m.clientY) / matrix.d / p.perMm
      return Math.max(Math.round(mm / STEP_MM) * STEP_MM, STEP_MM - p.depth)
    }
    let to = 0
    followHand(
      on,
      e.pointerId,
      m => {
        to = stepsOf(m)
        setBy(to)
      },
      meant => {
        setBy(null)
        if (meant && to !== 0) lay(p.depth + to)
      }
    )
  }
  const moved = by ?? 0
  const y = p.y - moved * p.perMm
  return (
    <g
      class="level"
      tabindex={0}
      role="slider"
      aria-label={w.draw.height(p.name)}
      aria-orientation="vertical"
      aria-valuenow={p.depth}
      aria-valuemin={STEP_MM}
      aria-valuemax={500}
      aria-valuetext={lengthShown(p.depth)}
      onPointerDown={e => follow(e.currentTarget, e)}
      onKeyDown={e => {
        const step = (e.shiftKey ? 10 : 1) * STEP_MM
        if (e.key === 'ArrowUp') lay(p.depth + step)
        else if (e.key === 'ArrowDown') lay(p.depth - step)
        else return
        e.preventDefault()
      }}
    >
      <path class="grip" d={`M${p.x0} ${y}H${p.x1}`} />
      <path class="rule" d={`M${p.x0} ${y}H${p.x1}`} />
      <path class="mark" d={`M${p.x0 - 3} ${y}H${p.x0 + 0.5}`} />
      {by === null ? null : (
        <>
          <path class="i-cutting-plane" d={`M${p.x0} ${y}H${p.x1}`} />
          <text class="l-figure" x={p.x0 + 2} y={y - 1.2} font-size="3.5">
            {lengthShown(p.depth + moved)}
          </text>
        </>
      )}
    </g>
  )
}

function lengthShown(mm: number): string {
  return `${lengthIn(units.value, mm, 1)} ${lengthUnit(units.value)}`
}
