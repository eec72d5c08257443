import { lengthIn } from '../../../engine/src/quantity/shown-units.ts'
import { units } from '../state/preferences.ts'
import { cutsWords as c } from '../text/cuts.ts'
import type { CutsView } from '../worker/cuts-view.ts'

/** Where the pins stand, in the coordinates of the programs with the front up. */
export function PinsSay({ pins, turned }: { readonly pins: CutsView['pins']; readonly turned: boolean }) {
  if (pins.length === 0 && !turned) return null
  const mm = (v: number, places = 1) => lengthIn(units.value, v, places)
  return (
    <section class="pins" aria-label={c.pins}>
      <h3>{c.pins}</h3>
      {pins.length === 0 ? <p>{c.noPins}</p> : null}
      <ul class="plain f">
        {pins.map(p => (
          <li key={p.number}>
            <b>
              {c.pin(p.number, mm(p.x), mm(p.y))}, Ø {mm(p.diameterMm)}
            </b>
            : {c.hole(mm(p.holeMm, 2), p.slotMm > 0 ? mm(p.slotMm) : null)},{' '}
            {p.depthMm === null ? c.through : c.deep(mm(p.depthMm))}, {c.inBed(mm(p.bedMm))}
            {p.pin === null ? '' : `; ${p.pin}`}
          </li>
        ))}
      </ul>
    </section>
  )
}
