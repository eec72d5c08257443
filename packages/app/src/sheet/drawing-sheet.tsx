import { useEffect, useMemo, useState } from 'preact/hooks'
import { lengthUnit } from '../../../engine/src/quantity/shown-units.ts'
import { coreStrip } from '../../../engine/src/sheets/core-strip.ts'
import { coreWords } from '../../../engine/src/sheets/core-words.ts'
import { frontPatch } from '../../../engine/src/sheets/front-patch.ts'
import type { Sheet } from '../../../engine/src/sheets/mark.ts'
import { sectionAt } from '../../../engine/src/sheets/section-at.ts'
import { svgBody } from '../../../engine/src/sheets/svg.ts'
import { latePart } from '../late/part.tsx'
import { Choice } from '../look/choice.tsx'
import { Drawing, Written } from '../look/drawing.tsx'
import { piece, stale } from '../state/desk.ts'
import { follow } from '../state/route.ts'
import { face } from '../state/screen.ts'
import { w } from '../text/words.ts'
import type { Drawn, PlannedView } from '../worker/views.ts'
import { heatSays } from './heat-words.ts'
import { heatOn, heatZ, inRound, levels, ownLine, pointer, stretched } from './place.ts'
import { PlanPad } from './plan-pad.tsx'
import { RoundPad } from './round-pad.tsx'
import { sectionDrawn } from './section-drawn.ts'
import { SectionHeights } from './section-heights.tsx'
import { TitleBlock } from './title-block.tsx'

const HeatLegend = latePart(async () => (await import('./heat-map.tsx')).HeatLegend)
/** The row of tools over the plan; its room is kept until it is loaded. */
const ToolRow = latePart(
  async () => (await import('../draw/tool-row.tsx')).ToolRow,
  <div class="tools-row">
    <span class="link">{'\u00a0'}</span>
    <p class="f tool-says" />
  </div>
)

/** Sizes of what is drawn at the pointer, mm. */
const CORE_MM = 58
const ACROSS = { widthMm: 88, heightMm: 46 } as const
const STRIP_RANGE_MM = [84, 118] as const
/** How long the pointer rests before the core is said, ms. */
const REST_MS = 350

const drawn = (s: Sheet): Drawn => ({ widthMm: s.widthMm, heightMm: s.heightMm, body: svgBody(s) })

/** The sheet: plan, section under it, core beside it, key and title block. */
export function DrawingSheet({ view }: { readonly view: PlannedView }) {
  const { model } = view
  const [x, y] = pointer.value ?? view.pointer
  const strip = {
    widthMm: CORE_MM,
    heightMm: Math.min(STRIP_RANGE_MM[1], Math.max(STRIP_RANGE_MM[0], view.plane.view.heightMm + 6))
  }
  const core = useMemo(
    () => drawn(coreStrip(model, x, y, { levels: levels.value, ...strip })),
    [model, x, y, levels.value]
  )
  const patch = useMemo(() => drawn(frontPatch(model, x, y, CORE_MM)), [model, x, y])
  const across = useMemo(() => drawn(sectionAt(model, x, y, ACROSS)), [model, x, y])
  const path = ownLine.value ?? view.section.path
  const section = useMemo(() => sectionDrawn(view, path, stretched.value), [view, path, stretched.value])
  return (
    <section class={`sheet${stale.value ? ' old' : ''}`} aria-label={w.sheet.region} data-face={face.value}>
      <ToolRow />
      <div class="cap c-plan">
        <h2>{inRound.value ? w.sheet.round : w.sheet.plan}</h2>
        <button type="button" class="link f" onClick={() => (inRound.value = !inRound.value)}>
          {inRound.value ? w.sheet.flat : w.sheet.round}
        </button>
        <Choice
          words={w.sheet.face}
          options={
            [
              ['front', w.sheet.front],
              ['back', w.sheet.back]
            ] as const
          }
          value={face.value}
          onPick={f => (face.value = f)}
        />
        {inRound.value ? null : (
          <button
            type="button"
            class="link f"
            aria-pressed={heatOn.value}
            onClick={() => (heatOn.value = !heatOn.value)}
          >
            {heatOn.value ? w.heat.off : w.heat.on}
          </button>
        )}
        {piece.value === null ? null : (
          <a class="link f" href={`/piece/${piece.value.id}/photo`} onClick={follow}>
            {w.photo.link}
          </a>
        )}
      </div>
      <div class="pad" id="plan">
        {inRound.value ? (
          <RoundPad view={view} path={path} />
        ) : (
          <>
            <PlanPad view={view} x={x} y={y} path={path} />
            {heatOn.value ? <HeatLegend view={view} x={x} y={y} /> : null}
          </>
        )}
      </div>
      <div class="cap c-core">
        <h2>{w.sheet.core}</h2>
        <Choice
          words={w.sheet.levels}
          options={
            [
              ['finished', w.sheet.finished],
              ['as cast', w.sheet.cast]
            ] as const
          }
          value={levels.value}
          onPick={l => (levels.value = l)}
        />
      </div>
      <div class="core">
        <div id="core" data-x={x} data-y={y}>
          <Drawing drawn={core} name="strip" words={null} />
        </div>
        <h2 class="sub">
          {w.sheet.fromFront} <span>{w.sheet.colours}</span>
        </h2>
        <Drawing drawn={patch} name="patch" words={null} />
        <Says view={view} x={x} y={y} />
      </div>
      <div class="cap c-section">
        <h2>
          {w.sheet.section}
          {path.legs.length > 1 ? w.sheet.stepped : path.along === 'y' ? w.sheet.across : ''}
          {section.enlarged === 1 ? null : <span> {w.sheet.enlargedBy(section.enlarged)}</span>}
        </h2>
        <Choice
          words={w.sheet.heights}
          options={
            [
              ['true', w.sheet.true],
              ['stretched', w.sheet.stretched]
            ] as const
          }
          value={stretched.value ? 'stretched' : 'true'}
          onPick={h => (stretched.value = h === 'stretched')}
        />
        {ownLine.value === null ? null : (
          <button type="button" class="link f" onClick={() => (ownLine.value = null)}>
            {w.sheet.lineAuto}
          </button>
        )}
      </div>
      <div class="section-aa" id="section">
        <Drawing drawn={section.drawn} name="aa" words={w.sheet.section}>
          <SectionHeights view={view} {...section} />
        </Drawing>
      </div>
      <div class="across">
        <div class="cap">
          <h2>{w.sheet.atPointer}</h2>
          <p class="f">{w.sheet.enlarged}</p>
        </div>
        <Drawing drawn={across} name="bb" words={null} />
      </div>
      <div class="foot">
        <div class="key">
          <Written markup={view.key} />
          <div class="bar">
            <Drawing drawn={view.plane.bar} name="scale" words={w.sheet.scale} />
            <p class="f">
              {(section.enlarged === 1 ? w.sheet.barBoth : w.sheet.barPlan)(lengthUnit(model.shown))}
            </p>
          </div>
        </div>
        <TitleBlock view={view} />
      </div>
    </section>
  )
}

// The core in words, once the pointer rests.
function Says({ view, x, y }: { readonly view: PlannedView; readonly x: number; readonly y: number }) {
  const [says, setSays] = useState('')
  useEffect(() => {
    const rest = setTimeout(() => {
      const heat = heatOn.value ? heatSays(view, x, y) : ''
      setSays([coreWords(view.model, x, y), heat].filter(s => s !== '').join(' '))
    }, REST_MS)
    return () => clearTimeout(rest)
  }, [view.model, x, y, heatOn.value, heatZ.value])
  return (
    <p id="core-says" class="says-core" role="status">
      {says}
    </p>
  )
}
