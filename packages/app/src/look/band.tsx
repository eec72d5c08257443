import { settle } from '../state/clash.ts'
import { clash, deskSays } from '../state/open-piece.ts'
import { awaySince, greet, paired } from '../state/reach.ts'
import { w } from '../text/words.ts'

/** What stands over everything when it is not as usual: no network, not paired, changed elsewhere. */
export function Band() {
  if (!paired.value) return null
  const since = awaySince.value
  return (
    <>
      {since === null ? null : (
        <div class="band" role="status">
          <p>
            <b>{w.state.offline(`${since.getHours()}:${String(since.getMinutes()).padStart(2, '0')}`)}</b>{' '}
            {w.state.offlineSays}
          </p>
          <button type="button" class="btn" onClick={() => void greet()}>
            {w.state.look}
          </button>
        </div>
      )}
      {clash.value === null ? null : (
        <div class="band" role="alert">
          <p>
            <b>{w.state.changed}</b> {w.state.changedSays}
          </p>
          <button type="button" class="btn" onClick={() => void settle('mine')}>
            {w.state.mine}
          </button>
          <button type="button" class="btn" onClick={() => void settle('theirs')}>
            {w.state.theirs}
          </button>
        </div>
      )}
      {deskSays.value === '' ? null : (
        <div class="band" role="alert">
          <p>{deskSays.value}</p>
          <button type="button" class="btn" onClick={() => (deskSays.value = '')}>
            {w.card.close}
          </button>
        </div>
      )}
    </>
  )
}
