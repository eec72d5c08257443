import { Choice } from '../look/choice.tsx'
import { cutsWords as c } from '../text/cuts.ts'
import type { SettingView } from '../worker/cuts-view.ts'
import type { Shown } from './picked.ts'
import { shown } from './picked.ts'

/** What the drawings show: the ways of the cutters, what is left under them, or what is off. */
export function ShownRow({ settings }: { readonly settings: readonly SettingView[] }) {
  const can: Readonly<Record<Shown, boolean>> = {
    ways: true,
    cover: settings.some(s => s.cover !== null),
    off: settings.some(s => s.off !== null)
  }
  const choices = (['ways', 'cover', 'off'] as const).filter(k => can[k])
  if (choices.length < 2) return null
  return (
    <div class="shown-row">
      <span class="f">{c.shownHead}</span>
      <Choice
        words={c.shownHead}
        options={choices.map(k => [k, c.shown[k]] as const)}
        value={shown.value}
        onPick={k => (shown.value = k)}
      />
    </div>
  )
}
