import type { ComponentType, VNode } from 'preact'
import { useEffect, useState } from 'preact/hooks'

/**
 * A part of a screen whose code is loaded once it is first shown; until then its stand-in is, which keeps its room. One
 * that could not be loaded is tried again when it is shown anew.
 */
export function latePart<P extends object>(
  fetched: () => Promise<ComponentType<P>>,
  standIn: VNode | null = null
): ComponentType<P> {
  let got: ComponentType<P> | null = null
  return function LatePart(props: P) {
    const [, loaded] = useState(got !== null)
    useEffect(() => {
      if (got !== null) return
      let gone = false
      fetched().then(
        part => {
          got = part
          if (!gone) loaded(true)
        },
        () => undefined
      )
      return () => {
        gone = true
      }
    }, [])
    const Here = got
    return Here === null ? standIn : <Here {...props} />
  }
}
