import { Button, NativeSelect } from '@mantine/core'
import { useId } from 'react'
import { MatchField } from '../../charts/MatchField.tsx'
import { Measured } from '../../charts/Measured.tsx'
import { sideOf } from '../../charts/RobotSign.tsx'
import { words } from '../../words/catalogue.ts'
import { plain, seconds } from '../../words/format.ts'
import type { Lineup } from '../../worker/protocol.ts'
import { EventList } from './EventList.tsx'
import { periodAt } from './happened.ts'
import { signOf } from './names.ts'
import { momentOf, type Reel } from './replay.ts'
import { RobotsNow, ScoreNow } from './ScoreNow.tsx'
import { useReel } from './useReel.ts'

const speeds = [0.5, 1, 4, 16]
/** Two events this near each other (s) are one step. */
const together = 0.05

/** One match on the field: played, stepped through, or moved by the slider. */
export function Player(props: { reel: Reel; lineup: Lineup }) {
  const { reel, lineup } = props
  const { game, timeline, end } = reel
  const text = words().match.replay
  const slider = useId()
  const shown = useReel(end)
  const { time } = shown
  const moment = momentOf(reel, time)
  const after = timeline.events.find(({ at }) => at > time + together)?.at ?? end
  const before = timeline.events.findLast(({ at }) => at < time - together)?.at ?? 0
  const said = text.said(seconds(time), text.periods[periodAt(game, time)])
  return (
    <div className="replay">
      <div className="stack">
        <Measured drawn="replay" data={reel}>
          {(width) => (
            <MatchField
              game={game}
              width={width}
              told={text.drawing(said)}
              robots={moment.robots.map(({ at, doing, load }, robot) => ({
                sign: signOf(robot),
                side: sideOf(robot),
                at,
                length: reel.options[robot]!.robot.footprint.length,
                out: doing === 'absent' || doing === 'stops',
                waits: doing === 'queues' || doing === 'waits',
                load,
              }))}
            />
          )}
        </Measured>
        <div className="moment-slider no-print">
          <label htmlFor={slider} className="small">
            {text.time}: <span className="numeral">{said}</span>
          </label>
          <input
            id={slider}
            type="range"
            min={0}
            max={end}
            step={0.5}
            value={time}
            aria-valuetext={said}
            onChange={(event) => shown.show(Number(event.currentTarget.value))}
          />
        </div>
        <div className="row no-print" style={{ alignItems: 'end' }}>
          {shown.play &&
            (shown.playing ? (
              <Button onClick={shown.pause}>{text.pause}</Button>
            ) : (
              <Button onClick={shown.play}>{text.play}</Button>
            ))}
          <Button variant="default" onClick={() => shown.show(0)}>
            {text.start}
          </Button>
          <Button variant="default" disabled={time <= 0} onClick={() => shown.show(before)}>
            {text.back}
          </Button>
          <Button variant="default" disabled={time >= end} onClick={() => shown.show(after)}>
            {text.next}
          </Button>
          {shown.play && (
            <NativeSelect
              label={text.speed}
              w={110}
              value={String(shown.speed)}
              data={speeds.map((speed) => ({ value: String(speed), label: text.times(plain(speed, 1)) }))}
              onChange={(event) => shown.setSpeed(Number(event.currentTarget.value))}
            />
          )}
        </div>
        {!shown.play && <p className="soft small no-print">{text.reduced}</p>}
        <p className="soft small">{text.evenly}</p>
      </div>
      <div className="stack">
        <ScoreNow game={game} moment={moment} final={time >= end ? timeline.score : null} />
        <RobotsNow game={game} lineup={lineup} moment={moment} />
        <EventList reel={reel} time={time} />
      </div>
    </div>
  )
}
