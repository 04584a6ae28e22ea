import { useEffect, useState } from 'react'
import { words } from '../../../words/catalogue.ts'
import { decimal } from '../../../words/decimal.ts'
import type { Tap } from './watch.ts'

/** When an event happened (ms since 1970): by the browser's own steady clock, which no change of the phone's clock moves. */
const momentOf = (event: { timeStamp: number }) => performance.timeOrigin + event.timeStamp

/** The running time and the presses: large, at the thumb, and each taken back with one more. */
export function WatchFace(props: {
  startedAt: number | null
  last: string | null
  undone: Tap | null
  onTap(tap: Tap, at: number): void
  onUndo(): void
}) {
  const { startedAt, last, undone } = props
  const texts = words().stopwatch
  const running = startedAt !== null
  useAwake(running)
  return (
    <section className="watch" aria-label={texts.title}>
      <p className="watch-time">
        <span className="visually-hidden">{running ? texts.running : texts.stopped}: </span>
        <Running startedAt={startedAt} />
      </p>
      <p className="watch-last" role="status">
        {last ?? '\u00a0'}
      </p>
      <div className="watch-presses">
        <Press
          className={running ? 'press stop' : 'press start'}
          text={running ? texts.stop : texts.start}
          onPress={(at) => props.onTap(running ? 'stop' : 'start', at)}
        />
        <Press className="press" text={texts.next} disabled={!running} onPress={(at) => props.onTap('next', at)} />
        <button type="button" className="press undo" disabled={undone === null} onClick={props.onUndo}>
          {texts.undo[undone ?? 'stop']}
        </button>
      </div>
    </section>
  )
}

/** A press counts when the finger comes down; by keyboard when the key does. What came down wrong is taken back. */
function Press(props: { className: string; text: string; disabled?: boolean; onPress(at: number): void }) {
  return (
    <button
      type="button"
      className={props.className}
      disabled={props.disabled}
      onPointerDown={(event) => {
        if (event.button === 0) props.onPress(momentOf(event))
      }}
      onClick={(event) => {
        if (event.detail === 0) props.onPress(momentOf(event))
      }}
    >
      {props.text}
    </button>
  )
}

function Running(props: { startedAt: number | null }) {
  const { startedAt } = props
  const [now, setNow] = useState(0)
  useEffect(() => {
    if (startedAt === null) return
    let frame = 0
    const draw = () => {
      setNow(performance.timeOrigin + performance.now())
      frame = requestAnimationFrame(draw)
    }
    draw()
    return () => cancelAnimationFrame(frame)
  }, [startedAt])
  const seconds = startedAt === null ? 0 : Math.max(0, now - startedAt) / 1000
  return (
    <span className="numeral" aria-hidden={startedAt !== null}>
      {words().stopwatch.time(decimal(seconds, 1))}
    </span>
  )
}

/** The screen stays on while the watch runs, where the phone allows it. */
function useAwake(on: boolean): void {
  useEffect(() => {
    if (!on || !('wakeLock' in navigator)) return
    let lock: WakeLockSentinel | null = null
    let left = false
    navigator.wakeLock.request('screen').then(
      (found) => {
        lock = found
        if (left) void found.release()
      },
      () => {
        // The watch runs all the same.
      },
    )
    return () => {
      left = true
      void lock?.release()
    }
  }, [on])
}
