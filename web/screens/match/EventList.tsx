import { useEffect, useRef } from 'react'
import { words } from '../../words/catalogue.ts'
import { seconds } from '../../words/format.ts'
import { memoWords } from '../../words/memo.tsx'
import { eventWords } from './happened.ts'
import { signOf } from './names.ts'
import type { Reel } from './replay.ts'

/** What happened, with its times; what is past by now is marked, and kept in sight. */
export function EventList(props: { reel: Reel; time: number }) {
  const { reel, time } = props
  const box = useRef<HTMLDivElement>(null)
  const { events } = reel.timeline
  const now = events.findLastIndex(({ at }) => at <= time + 1e-9)
  useEffect(() => {
    const row = box.current?.querySelector<HTMLElement>(`li:nth-child(${Math.max(1, now + 1)})`)
    if (row && box.current) box.current.scrollTop = row.offsetTop - box.current.clientHeight / 2
  }, [now])
  return <Lines box={box} reel={reel} now={now} />
}

const Lines = memoWords(function Lines(props: {
  box: React.RefObject<HTMLDivElement | null>
  reel: Reel
  now: number
}) {
  const { box, reel, now } = props
  const text = words().match.replay
  const absent = reel.timeline.played.flatMap((played, robot) => (played ? [] : [robot]))
  return (
    <>
      <h3>{text.list}</h3>
      {absent.map((robot) => (
        <p key={robot}>{text.absent(signOf(robot))}</p>
      ))}
      <div ref={box} className="scroll happened" tabIndex={0} role="region" aria-label={text.list}>
        <ol>
          {reel.timeline.events.map((event, index) => (
            <li
              // biome-ignore lint/suspicious/noArrayIndexKey: two events may be alike in all but their place
              key={index}
              aria-current={index === now ? 'step' : undefined}
              className={index > now ? 'soft' : undefined}
            >
              <span className="numeral">{seconds(event.at)}</span>{' '}
              {text.event(signOf(event.robot), eventWords(reel.game, event))}
            </li>
          ))}
        </ol>
      </div>
    </>
  )
})
