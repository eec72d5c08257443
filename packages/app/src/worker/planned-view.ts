import type { Work } from '../../../engine/src/findings/work.ts'
import type { Lengths } from '../../../engine/src/piece/lengths.ts'
import { lengthsIn } from '../../../engine/src/piece/lengths.ts'
import type { Planned } from '../../../engine/src/plan.ts'
import type { ShownUnits } from '../../../engine/src/quantity/shown-units.ts'
import { lengthIn, METRIC } from '../../../engine/src/quantity/shown-units.ts'
import { bounds } from '../../../engine/src/shape/measure.ts'
import type { CoreModel } from '../../../engine/src/sheets/core-model.ts'
import type { Sheet } from '../../../engine/src/sheets/mark.ts'
import { capital, coreModelOf } from '../../../engine/src/sheets/model.ts'
import { dayNumber } from '../../../engine/src/sheets/moment.ts'
import { verdictWords } from '../../../engine/src/sheets/page.ts'
import { artSheet, layerOrder } from '../../../engine/src/sheets/page-card.ts'
import type { PageView } from '../../../engine/src/sheets/page-data.ts'
import { modelData } from '../../../engine/src/sheets/page-data.ts'
import type { Numbered } from '../../../engine/src/sheets/page-finding.ts'
import { findingFigures, numbered, sentence, stopped } from '../../../engine/src/sheets/page-finding.ts'
import { entryName } from '../../../engine/src/sheets/page-place.ts'
import { keyList, pointerOf, readyMin } from '../../../engine/src/sheets/page-sheet.ts'
import { beforePours, dayOf } from '../../../engine/src/sheets/page-steps.ts'
import { scaleBar } from '../../../engine/src/sheets/scale-bar.ts'
import { sectionPathOf } from '../../../engine/src/sheets/section-path.ts'
import { faceView, partsOn, roundsOn } from '../../../engine/src/sheets/sheet-views.ts'
import { stepFacts, stepWords } from '../../../engine/src/sheets/step-facts.ts'
import { svgBody } from '../../../engine/src/sheets/svg.ts'
import { cutPlans } from './cut-plans.ts'
import { layerView } from './layer-view.ts'
import type { Drawn, EntryName, FindingView, HeatView, Plane, SentView, StepView } from './views.ts'

/** What the screens show of a plan: figures, words and drawings, ready to lay out. */
export function plannedView(
  planned: Planned,
  width: PageView['id'] = 'wide',
  face: PageView['face'] = 'front',
  shown: ShownUnits = METRIC
): SentView {
  const { plan, work } = planned
  const model = coreModelOf(work, shown)
  const path = sectionPathOf(work)
  const L = lengthsIn(shown)
  return {
    effort: plan.effort,
    cast: plan.whole?.effort ?? 'column',
    name: plan.name,
    verdict: plan.verdict,
    says: L.beside(verdictWords(plan)),
    totals: plan.totals,
    readyDay: dayNumber(readyMin(plan)),
    priced: plan.buy.length > plan.totals.unpriced,
    findings: numbered(plan).map(n => findingView(work, n, L)),
    layers: layerOrder(plan, work).map(i => layerView(planned, model, i)),
    art: drawnOf(artSheet(plan, work, model)),
    steps: plan.steps.map(
      (s, i): StepView => ({
        number: s.number,
        kind: s.kind,
        says: stepWords(work.steps[i]!, s),
        facts: stepFacts(plan, work, i, shown).filter(f => f !== ''),
        at: s.at,
        day: dayOf(work, s.startMin, beforePours(plan, i)),
        safety: s.safety.map(l => ({ ...l, line: L.beside(l.line) }))
      })
    ),
    entries: entryNames(planned, shown),
    model: JSON.stringify(modelData(model)),
    pointer: pointerOf(plan, work, model),
    plane: planeOf(work, model, width, face),
    key: keyList(model).text,
    section: { path, parts: partsOn(path, work), rounds: roundsOn(path, work) },
    heat: heatView(planned),
    cuts: cutPlans(work),
    parts: work.fits.flatMap((fit, i) =>
      fit.part === null
        ? []
        : [
            {
              at: `/hardware/${i}`,
              x: fit.x,
              y: fit.y,
              widthMm: fit.part.widthMm,
              lengthMm: fit.part.lengthMm,
              round: fit.part.shape === 'round',
              turnDeg: work.entries.hardware[i]!.value.turn
            }
          ]
    )
  }
}

export function drawnOf(sheet: Sheet): Drawn {
  return { widthMm: sheet.widthMm, heightMm: sheet.heightMm, body: svgBody(sheet) }
}

function planeOf(work: Work, model: CoreModel, id: PageView['id'], face: PageView['face']): Plane {
  const { sheet, view } = faceView(work, model, id, face)
  const bar: Sheet = { widthMm: 52, heightMm: 7, marks: scaleBar(view.scale, 40, 2, 2, model.shown) }
  return { drawn: drawnOf(sheet), view, bar: drawnOf(bar) }
}

function findingView(work: Work, { number, finding: f }: Numbered, L: Lengths): FindingView {
  return {
    number,
    id: f.id,
    severity: f.severity,
    at: f.at,
    where: capital(entryName(work, f.at)),
    says: L.beside(sentence(f.says)),
    figures: findingFigures(f, L),
    basis: L.beside(stopped(f.basis)),
    settledBy: f.settledBy === null ? null : L.beside(stopped(f.settledBy)),
    fix: f.fix,
    fixSays: f.fixSays === null ? null : L.beside(capital(f.fixSays))
  }
}

function heatView({ work }: Planned): HeatView | null {
  const { whole, entries } = work
  if (whole === null) return null
  return {
    map: whole.map,
    hottest: whole.hottest.flatMap((at, i) =>
      at === null ? [] : [{ name: capital(entries.pours[i]!.id), at, c: whole.casts[i]!.peakC }]
    )
  }
}

function entryNames({ plan, work }: Planned, shown: ShownUnits): EntryName[] {
  const { entries, materials } = work
  const size = (i: number) => {
    const b = bounds(work.stack.geometry.timbers[i]!.upper)
    return `${lengthIn(shown, b.maxX - b.minX, 0)} × ${lengthIn(shown, b.maxY - b.minY, 0)}`
  }
  return [
    ...entries.timbers.map((e, i) => ({
      at: e.at,
      name: capital(e.id),
      words: `${materials.timbers[i]!.name}, ${size(i)}`
    })),
    ...entries.pours.map((e, i) => ({ at: e.at, name: capital(e.id), words: materials.resins[i]!.name })),
    ...entries.cuts.map((e, i) => ({
      at: e.at,
      name: capital(e.id),
      words: `${e.value.kind}, ${plan.cuts[i]!.face}`
    })),
    ...entries.hardware.map((e, i) => ({
      at: e.at,
      name: capital(e.id),
      words: materials.hardware[i]!.name
    })),
    ...entries.markings.map(e => ({ at: e.at, name: capital(e.id), words: 'marking' })),
    ...entries.formers.map(e => ({ at: e.at, name: capital(e.id), words: 'former' }))
  ]
}
