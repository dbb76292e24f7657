import type { RefObject } from 'preact'
import { useEffect, useState } from 'preact/hooks'

/** The height of an element as it is now laid out, screen dots; 0 until it is. */
export function useHeight(element: RefObject<HTMLElement | null>): number {
  const [height, setHeight] = useState(0)
  useEffect(() => {
    const watched = element.current
    if (!watched) return
    const observer = new ResizeObserver(() => setHeight(watched.clientHeight))
    observer.observe(watched)
    return () => observer.disconnect()
  }, [element])
  return height
}
