import type { ComponentType } from 'preact'
import { useEffect, useState } from 'preact/hooks'
import { w } from '../text/words.ts'

/** A place whose code is loaded when it is first gone to. */
export interface Later<P extends object> {
  readonly Place: ComponentType<P>
  /** Loads it ahead: for a page that must go on without network and has no service worker. */
  readonly load: () => Promise<unknown>
}

/** Makes such a place of what loads it. Loaded once; one that could not be loaded is tried again by a press. */
export function later<P extends object>(fetched: () => Promise<ComponentType<P>>): Later<P> {
  let got: ComponentType<P> | null = null
  const load = async () => {
    got ??= await fetched()
    return got
  }
  const Place = (props: P) => {
    const [state, setState] = useState<'here' | 'coming' | 'away'>(got === null ? 'coming' : 'here')
    useEffect(() => {
      if (state !== 'coming') return
      let gone = false
      load().then(
        () => gone || setState('here'),
        () => gone || setState('away')
      )
      return () => {
        gone = true
      }
    }, [state])
    const Here = got
    if (Here !== null) return <Here {...props} />
    return (
      <main class="alone" id="main">
        <section class="paper" aria-busy={state === 'coming'}>
          {state === 'coming' ? (
            <p class="f">{w.state.loading}</p>
          ) : (
            <>
              <p role="alert">{w.state.notLoaded}</p>
              <button type="button" class="btn" onClick={() => setState('coming')}>
                {w.state.look}
              </button>
            </>
          )}
        </section>
      </main>
    )
  }
  return { Place, load }
}
