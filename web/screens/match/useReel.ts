import { useReducedMotion } from '@mantine/hooks'
import { useEffect, useRef, useState } from 'react'

/**
 * The moment of a match that is shown, and its playing at a multiple of true time. `play` is null for who asked for less
 * motion: slider and steps show the same.
 */
export function useReel(end: number) {
  const reduced = useReducedMotion()
  const [time, setTime] = useState(0)
  const [playing, setPlaying] = useState(false)
  const [speed, setSpeed] = useState(4)
  const now = useRef(0)
  now.current = time
  useEffect(() => {
    if (!playing) return
    let frame = 0
    let last: number | null = null
    const draw = (at: number) => {
      const next = Math.min(end, now.current + ((at - (last ?? at)) / 1000) * speed)
      last = at
      now.current = next
      setTime(next)
      if (next < end) frame = requestAnimationFrame(draw)
      else setPlaying(false)
    }
    frame = requestAnimationFrame(draw)
    return () => cancelAnimationFrame(frame)
  }, [playing, speed, end])
  return {
    time,
    speed,
    setSpeed,
    playing: playing && !reduced,
    /** Another choice of the moment ends the playing. */
    show: (at: number) => {
      setPlaying(false)
      setTime(Math.min(end, Math.max(0, at)))
    },
    play: reduced
      ? null
      : () => {
          if (time >= end) setTime(0)
          setPlaying(true)
        },
    pause: () => setPlaying(false),
  }
}
