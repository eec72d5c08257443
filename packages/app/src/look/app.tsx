import { useEffect } from 'preact/hooks'
import { PiecesScreen } from '../pieces/pieces-screen.tsx'
import { SheetScreen } from '../sheet/sheet-screen.tsx'
import { PairScreen } from '../shop/pair-screen.tsx'
import { canRedo, canUndo, piece, redo, said, undo } from '../state/desk.ts'
import { paired } from '../state/reach.ts'
import { route } from '../state/route.ts'
import { w } from '../text/words.ts'
import { Band } from './band.tsx'
import { devicesPlace, shopPlace } from './places.ts'
import { Top } from './top.tsx'

/** The whole of it: what stands over every place, and the place. */
export function App() {
  useEffect(() => {
    const keys = (e: KeyboardEvent) => {
      const typing = e.target instanceof HTMLElement && e.target.matches('input, textarea, select')
      if (typing || !(e.ctrlKey || e.metaKey) || e.altKey || e.key.toLowerCase() !== 'z') return
      e.preventDefault()
      if (e.shiftKey) {
        if (canRedo.value) redo()
      } else if (canUndo.value) undo()
    }
    addEventListener('keydown', keys)
    return () => removeEventListener('keydown', keys)
  }, [])
  const at = route.value
  useEffect(() => {
    document.title =
      at.at === 'sheet' && piece.value !== null ? `${String(piece.value.document['name'])}: ${w.app}` : w.app
  }, [at, piece.value?.document['name']])
  return (
    <>
      <a
        class="skip"
        href={at.at === 'sheet' && at.part === 'sheet' && piece.value !== null ? '#card' : '#main'}
      >
        {w.skip}
      </a>
      <Top />
      <Band />
      <Here />
      <p class="says-core" role="status">
        {said.value}
      </p>
    </>
  )
}

function Here() {
  const at = route.value
  if (!paired.value) return <PairScreen />
  switch (at.at) {
    case 'sheet':
      return <SheetScreen key={at.id} id={at.id} part={at.part} />
    case 'shop':
      return <shopPlace.Place />
    case 'devices':
      return <devicesPlace.Place />
    default:
      return <PiecesScreen />
  }
}
