import { useReducedMotion } from '@mantine/hooks'
import { useEffect, useState } from 'react'

/**
 * Plays a movement once, in its own time. `play` is null for who asked for less motion: the slider shows the same.
 * Another choice of the moment meanwhile, or another movement, ends it.
 */
export function usePlay(seconds: number | null, show: (share: number) => void) {
  const reduced = useReducedMotion()
  const [playing, setPlaying] = useState(false)
  useEffect(() => {
    if (!playing || seconds === null) return
    let frame = 0
    let start: number | null = null
    const draw = (now: number) => {
      start ??= now
      const share = (now - start) / 1000 / seconds
      show(Math.min(1, share))
      if (share < 1) frame = requestAnimationFrame(draw)
      else setPlaying(false)
    }
    frame = requestAnimationFrame(draw)
    return () => cancelAnimationFrame(frame)
  }, [playing, seconds, show])
  const able = seconds !== null && !reduced
  return { playing: playing && able, play: able ? () => setPlaying(true) : null, stop: () => setPlaying(false) }
}
