import { useMemo } from 'preact/hooks'
import { peakAt } from '../../../engine/src/cast/whole/whole-cast.ts'
import { degreesIn, lengthIn, lengthUnit } from '../../../engine/src/quantity/shown-units.ts'
import { bounds } from '../../../engine/src/shape/measure.ts'
import { heatDrawn, layerAt } from '../../../engine/src/sheets/heat.ts'
import type { PageView } from '../../../engine/src/sheets/page-data.ts'
import { svgMarks } from '../../../engine/src/sheets/svg.ts'
import { TrySlider } from '../card/try-slider.tsx'
import { units } from '../state/preferences.ts'
import { w } from '../text/words.ts'
import type { HeatView, PlannedView } from '../worker/views.ts'
import { degrees, heightOf, hereWords } from './heat-words.ts'
import { heatZ, ringPath, toSheet } from './place.ts'

/** Side of a swatch of the legend, mm. */
const SWATCH_MM = 5
/** A hottest place is marked on the heights that lie within its own layer. */
const MARK_MM = 1.4

/** A drawing over the plan: its figures are said under it. */
const HIDDEN = { 'aria-hidden': 'true' } as const

/** The highest temperatures over the plan: tracing paper, contours with their degrees, the hottest place of each pour. */
export function HeatOver({ planned, heat }: { readonly planned: PlannedView; readonly heat: HeatView }) {
  const { view } = planned.plane
  const z = heightOf(planned, heat)
  const drawn = useMemo(() => drawnAt(planned, heat, z), [planned, z, units.value])
  const outline = ringPath(view, planned.model.geometry.outline.rings)
  const layer = layerAt(heat.map, z)
  return (
    <g class="heat" {...HIDDEN}>
      <clipPath id="heat-clip">
        <path d={outline} clip-rule="evenodd" />
      </clipPath>
      <path class="veil" d={outline} fill-rule="evenodd" />
      <g
        clip-path="url(#heat-clip)"
        dangerouslySetInnerHTML={{ __html: svgMarks(drawn.marks, view.heightMm) }}
      />
      {heat.hottest
        .filter(h => layerAt(heat.map, h.at[2]) === layer)
        .map(h => (
          <Hottest key={h.name} view={view} x={h.at[0]} y={h.at[1]} says={degrees(h.c)} />
        ))}
    </g>
  )
}

function Hottest(p: {
  readonly view: PageView
  readonly x: number
  readonly y: number
  readonly says: string
}) {
  const [x, y] = toSheet(p.view, p.x, p.y)
  const r = MARK_MM
  // Towards the middle of the drawing, where there is room.
  const left = x > p.view.widthMm / 2
  return (
    <g>
      <path
        class="i-outline"
        d={`M${x - r} ${y - r}L${x + r} ${y + r}M${x - r} ${y + r}L${x + r} ${y - r}`}
      />
      <text
        class="l-figure"
        x={left ? x + r : x - r}
        y={y + r + 3.4}
        font-size="3.5"
        font-weight="700"
        text-anchor={left ? 'end' : 'start'}
      >
        {p.says}
      </text>
    </g>
  )
}

/** What the pencil means, on which height it was drawn, how warm it gets at the pointer and where it is hottest. */
export function HeatLegend(p: { readonly view: PlannedView; readonly x: number; readonly y: number }) {
  const { heat, model } = p.view
  const shown = units.value
  const z = heat === null ? 0 : heightOf(p.view, heat)
  const drawn = useMemo(() => (heat === null ? null : drawnAt(p.view, heat, z)), [p.view, z, shown])
  if (heat === null || drawn === null) return <p class="heat-legend f">{w.heat.waits}</p>
  const at = peakAt(heat.map, p.x, p.y, z)
  const faces = heat.map.facesMm
  const [first, last] = [layerAt(heat.map, 0), layerAt(heat.map, model.castHeight - 1e-6)]
  return (
    <div class="heat-legend">
      {drawn.levels.length === 0 ? (
        <p class="f">{w.heat.even}</p>
      ) : (
        <ul class="swatches plain">
          <li class="q">{w.heat.legend}</li>
          {drawn.levels.map(l => (
            <li key={l.words}>
              <Swatch strokes={l.strokes} />
              {l.words} {shown.temperature}
            </li>
          ))}
        </ul>
      )}
      <TrySlider
        label={w.heat.height}
        of={w.heat.of}
        says={mm(z)}
        value={layerAt(heat.map, z)}
        least={first}
        most={Math.max(first + 1, last)}
        step={1}
        at={null}
        edge={null}
        edgeSays=""
        onTry={k => (heatZ.value = (faces[k]! + faces[Math.min(k + 1, faces.length - 1)]!) / 2)}
      />
      <p>
        {w.heat.range(
          degreesIn(shown, drawn.rangeC[0]),
          degreesIn(shown, drawn.rangeC[1]),
          shown.temperature
        )}
        , <b id="heat-here">{hereWords(at)}</b>
      </p>
      <p class="ways">
        <span class="q">{w.heat.hottest}</span>
        {heat.hottest.map(h => (
          <button
            key={h.name}
            type="button"
            class="link"
            title={w.heat.goTo(h.name)}
            onClick={() => (heatZ.value = h.at[2])}
          >
            {w.heat.place(h.name, degrees(h.c), mm(h.at[2]))}
          </button>
        ))}
      </p>
    </div>
  )
}

// Pencil of one swatch: as many goings-over as the level has, each in its own direction.
function Swatch({ strokes }: { readonly strokes: number }) {
  const d = Array.from({ length: strokes }, (_, k) => {
    const angle = [45, 135, 15, 105, 75, 165][k % 6]!
    const [c, s] = [Math.cos((angle * Math.PI) / 180), -Math.sin((angle * Math.PI) / 180)]
    return [-1.9, 0, 1.9]
      .map(off => {
        const [mx, my] = [SWATCH_MM / 2 - s * off, SWATCH_MM / 2 + c * off]
        const reach = 2.1 - Math.abs(off) / 4
        return `M${mx - c * reach} ${my - s * reach}L${mx + c * reach} ${my + s * reach}`
      })
      .join('')
  }).join('')
  return (
    <svg
      class="draw"
      viewBox={`0 0 ${SWATCH_MM} ${SWATCH_MM}`}
      width="1.25rem"
      height="1.25rem"
      aria-hidden="true"
    >
      <g class="heat">
        <path class="i-hatch" d={d} />
      </g>
    </svg>
  )
}

let last: { readonly key: readonly unknown[]; readonly drawn: ReturnType<typeof heatDrawn> } | null = null

// Plan and legend ask for the same drawing.
function drawnAt(planned: PlannedView, heat: HeatView, z: number): ReturnType<typeof heatDrawn> {
  const { view } = planned.plane
  const shown = units.value
  const key = [heat, layerAt(heat.map, z), view, shown]
  if (last === null || last.key.some((k, i) => k !== key[i])) {
    const within = bounds(planned.model.geometry.outline)
    last = { key, drawn: heatDrawn(heat.map, z, { view, shown, within }) }
  }
  return last.drawn
}

function mm(x: number): string {
  return `${lengthIn(units.value, x, 1, 1)} ${lengthUnit(units.value)}`
}
