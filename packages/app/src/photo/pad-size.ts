import type { RefObject } from 'preact'
import { useLayoutEffect, useState } from 'preact/hooks'
import type { Size } from './trace-view.ts'

/** The size of an element on the screen, px, as it is now. */
export function useSize(host: RefObject<HTMLDivElement | null>): Size {
  const [size, setSize] = useState<Size>([800, 600])
  useLayoutEffect(() => {
    const box = host.current
    if (box === null) return
    const measure = () => setSize([box.clientWidth, box.clientHeight])
    measure()
    const watch = new ResizeObserver(measure)
    watch.observe(box)
    return () => watch.disconnect()
  }, [])
  return size
}
