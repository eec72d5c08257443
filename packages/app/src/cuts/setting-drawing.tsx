import { Drawing } from '../look/drawing.tsx'
import { cutsWords as c } from '../text/cuts.ts'
import type { SettingView } from '../worker/cuts-view.ts'
import { CoverKey, OffKey } from './map-key.tsx'
import { markOver } from './mark-over.ts'
import { picked, pickedFinding, shown } from './picked.ts'
import { ZeroCheckCard } from './zero-check-card.tsx'

/** The piece as it lies in one setting, with the ways of its programs, or of the one that is picked. */
export function SettingDrawing({
  setting,
  turned,
  errorMm,
  toleranceMm
}: {
  readonly setting: SettingView
  readonly turned: boolean
  readonly errorMm: number
  readonly toleranceMm: number
}) {
  const one = setting.programs.find(p => p.file === picked.value)
  const face = c.face[setting.up]
  const mark = setting.marks.find(m => m.finding === pickedFinding.value && m.at !== null)
  const over = (one ?? setting).drawn
  const ringed = mark === undefined ? '' : markOver(mark, over.widthMm)
  const cover = one === undefined ? setting.cover : one.cover
  const map = shown.value === 'cover' ? cover?.body : shown.value === 'off' ? setting.off?.body : undefined
  // A map lies on bare paper: over materials its colours would not be those of its key.
  const under = shown.value === 'ways' ? setting.ground : (map ?? '')
  const drawn = { ...over, body: under + over.body + ringed }
  const words = c.drawn(face.toLowerCase(), shown.value)
  return (
    <section class="setting" aria-label={face}>
      {setting.marks.map(m => (
        <i key={m.finding} id={`mark-in-${m.finding}`} />
      ))}
      <div class="cap">
        <h2>{face}</h2>
        <span class="f">
          {[...setting.lies.slice(1), ...(turned ? [setting.lies[0]!.replace(/^[a-z]+ up,? ?/, '')] : [])]
            .filter(s => s !== '')
            .join('; ')}
        </span>
        {one === undefined ? null : (
          <button type="button" class="link f" onClick={() => (picked.value = null)}>
            {c.all}
          </button>
        )}
      </div>
      <Drawing
        drawn={drawn}
        name={shown.value === 'ways' ? 'lies' : 'lies map'}
        words={mark === undefined ? words : `${words}. ${c.marked(c.lineShort(mark.line))}`}
      />
      {shown.value === 'cover' ? <CoverKey cover={cover} /> : null}
      {shown.value === 'off' ? <OffKey off={setting.off} /> : null}
      <p class="f zero">
        <b>{c.zero}</b> {setting.zero[0]}
      </p>
      <ZeroCheckCard setting={setting} errorMm={errorMm} toleranceMm={toleranceMm} />
    </section>
  )
}
