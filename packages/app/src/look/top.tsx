import { canRedo, canUndo, done, piece, redo, saveSays, saving, undo, undone } from '../state/desk.ts'
import { isDim, theme, units } from '../state/preferences.ts'
import { awaySince, device, paired } from '../state/reach.ts'
import { follow, route } from '../state/route.ts'
import { w } from '../text/words.ts'
import { Choice } from './choice.tsx'
import { Revisions } from './revisions.tsx'

/** Name of the app, where one is, and what works everywhere: undo, units, light. */
export function Top() {
  const at = route.value
  const sheet = at.at === 'sheet'
  // A device that is not paired has nowhere to go.
  const places = !paired.value
    ? []
    : [
        ...(sheet
          ? [
              [`/piece/${at.id}`, w.place.sheet, at.part === 'sheet'] as const,
              [`/piece/${at.id}/cuts`, w.place.cuts, at.part === 'cuts'] as const,
              [`/piece/${at.id}/days`, w.place.days, at.part === 'days'] as const,
              [`/piece/${at.id}/buy`, w.place.buy, at.part === 'buy'] as const,
              [`/piece/${at.id}/bench`, w.place.bench, at.part === 'bench'] as const,
              [`/piece/${at.id}/print`, w.place.print, at.part === 'print'] as const
            ]
          : []),
        ['/', w.place.pieces, at.at === 'pieces'] as const,
        ['/shop', w.place.shop, at.at === 'shop'] as const,
        ...(device.value?.desk ? [['/devices', w.place.devices, at.at === 'devices'] as const] : [])
      ]
  return (
    <header class="top" data-part={sheet ? at.part : at.at}>
      <p class="mark">{w.app}</p>
      {sheet && piece.value !== null ? (
        <h1>{String(piece.value.document['name'])}</h1>
      ) : (
        <h1 class="says-core">{w.app}</h1>
      )}
      <nav class="places" aria-label={w.app} hidden={!paired.value}>
        {places.map(([href, words, here]) => (
          <a key={href} href={href} onClick={follow} aria-current={here ? 'page' : undefined}>
            {words}
          </a>
        ))}
      </nav>
      <div class="tools">
        {sheet && piece.value !== null ? (
          <>
            <Revisions words={savedWords()} />
            <button
              type="button"
              class="link"
              disabled={!canUndo.value}
              title={done.value.length > 0 ? w.tool.undoWhat(done.value.at(-1)!.says) : undefined}
              onClick={undo}
            >
              {w.tool.undo}
            </button>
            <button
              type="button"
              class="link"
              disabled={!canRedo.value}
              title={undone.value.length > 0 ? w.tool.redoWhat(undone.value.at(-1)!.says) : undefined}
              onClick={redo}
            >
              {w.tool.redo}
            </button>
          </>
        ) : null}
        <UnitsChoice />
        <button type="button" class="link" onClick={() => (theme.value = isDim() ? 'light' : 'dim')}>
          {isDim() ? w.tool.light : w.tool.dim}
        </button>
      </div>
    </header>
  )
}

function savedWords(): string {
  if (saving.value === 'saved') return w.saved.saved(piece.value!.revision)
  if (saving.value === 'saving') return w.saved.saving
  if (saving.value === 'failed') return `${w.saved.failed}: ${saveSays.value}`
  return awaySince.value === null ? w.saved.saving : w.saved.offline
}

function UnitsChoice() {
  const u = units.value
  return (
    <details class="units">
      <summary class="link">
        {u.length === 'mm' ? 'mm' : 'in'}, {u.temperature}, {u.mass}
      </summary>
      <div class="sheet-let">
        <Choice
          words={w.unit.length}
          options={w.unit.lengths}
          value={u.length}
          onPick={length => (units.value = { ...u, length })}
        />
        <Choice
          words={w.unit.temperature}
          options={w.unit.temperatures}
          value={u.temperature}
          onPick={temperature => (units.value = { ...u, temperature })}
        />
        <Choice
          words={w.unit.mass}
          options={w.unit.masses}
          value={u.mass}
          onPick={mass => (units.value = { ...u, mass })}
        />
      </div>
    </details>
  )
}
