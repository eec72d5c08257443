import { lengthIn, lengthUnit } from '../../../engine/src/quantity/shown-units.ts'
import { units } from '../state/preferences.ts'
import { cutsWords as c } from '../text/cuts.ts'
import type { CoverView, SettingView } from '../worker/cuts-view.ts'

const length = (mm: number, places: number) => lengthIn(units.value, mm, places)

/** What the colours of a map of cover stand for, and where least is left, in words. */
export function CoverKey({ cover }: { readonly cover: CoverView | null }) {
  if (cover === null) return <p class="f map-key">{c.noCover}</p>
  return (
    <div class="map-key">
      <p class="f">
        {c.coverSays(lengthUnit(units.value))}{' '}
        {cover.bands.map(({ n, fromMm, toMm }) => (
          <span key={n} class="swatch">
            <i class={`w-cover-${n}`} aria-hidden="true" />
            {toMm === null
              ? c.over(length(fromMm, 0))
              : fromMm === 0
                ? c.under(length(toMm, 0))
                : c.between(length(fromMm, 0), length(toMm, 0))}
          </span>
        ))}
      </p>
      <ol>
        {cover.least.map(l => (
          <li key={l.over}>
            <b>{length(l.mm, 1)}</b> {c.leastOver(l.over, length(l.x, 0), length(l.y, 0))}
          </li>
        ))}
      </ol>
    </div>
  )
}

/** What the colours of a map of what is off stand for. */
export function OffKey({ off }: Pick<SettingView, 'off'>) {
  if (off === null) return <p class="f map-key">{c.nothingOff}</p>
  return (
    <p class="map-key">
      {off.leftMm === 0 ? null : (
        <span class="swatch">
          <i class="w-left" aria-hidden="true" />
          {c.leftMost(length(off.leftMm, 2))}
        </span>
      )}
      {off.cutAwayMm === 0 ? null : (
        <span class="swatch">
          <i class="w-cut-away" aria-hidden="true" />
          {c.cutAwayMost(length(off.cutAwayMm, 2))}
        </span>
      )}
    </p>
  )
}
