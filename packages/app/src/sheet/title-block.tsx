import { bounds } from '../../../engine/src/shape/measure.ts'
import { EditedFigure } from '../card/edited-figure.tsx'
import { Figure } from '../look/field.tsx'
import { w } from '../text/words.ts'
import type { PlannedView } from '../worker/views.ts'

/** Name, size, mass, cost and ready day of the piece; what can be changed is pressed. */
export function TitleBlock({ view }: { readonly view: PlannedView }) {
  const { totals, name, effort } = view
  const b = bounds(view.model.geometry.outline)
  return (
    <div class="title">
      <div class="t-name">
        <p class="tn">
          <EditedFigure at="" field="name" words={w.pieces.name}>
            {name}
          </EditedFigure>
        </p>
        <p class="f">{effort === 'preview' ? w.state.firstPass : ''}</p>
      </div>
      <dl>
        <div>
          <dt>{w.title.size}</dt>
          <dd>
            <EditedFigure at="" field="outline" words={w.title.size}>
              <Figure value={b.maxX - b.minX} dimension="length" bare /> ×{' '}
              <Figure value={b.maxY - b.minY} dimension="length" bare />
            </EditedFigure>{' '}
            × <Figure value={totals.sizeMm[2]} dimension="length" />
          </dd>
        </div>
        <div>
          <dt>{w.title.mass}</dt>
          <dd>
            <Figure value={Number(totals.massG.toPrecision(2))} dimension="mass" />
          </dd>
        </div>
        <div>
          <dt>{w.title.ready}</dt>
          <dd>
            {w.title.day(view.readyDay)}
            <u>{w.title.atBest}</u>
          </dd>
        </div>
        <div>
          <dt>{w.title.scale}</dt>
          <dd>{w.title.fit}</dd>
        </div>
        <div>
          <dt>{w.title.materials}</dt>
          <dd>
            {view.priced ? (
              <>
                {totals.unpriced > 0 ? `${w.title.from} ` : ''}
                {Math.round(totals.materialCost)}
                <u>{totals.currency}</u>
              </>
            ) : (
              w.title.noPrices
            )}
          </dd>
        </div>
        <div>
          <dt>{w.title.number}</dt>
          <dd>
            <EditedFigure at="" field="quantity" words={w.title.number}>
              {totals.pieces}
            </EditedFigure>
          </dd>
        </div>
      </dl>
    </div>
  )
}
