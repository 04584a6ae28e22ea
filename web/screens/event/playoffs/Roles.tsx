import { Button, NativeSelect, NumberInput, Progress } from '@mantine/core'
import { useState } from 'react'
import type { LineupRequest } from '../../../../src/model/match/lineup/types.ts'
import type { EventPack } from '../../../data/eventPack.ts'
import { words } from '../../../words/catalogue.ts'
import { listed } from '../../../words/format.ts'
import { FoundLineup } from '../../match/lineup/FoundLineup.tsx'
import { useLineup } from '../../match/lineup/useLineup.ts'
import { defending, rolesFor } from './roles.ts'

/** Drives of a marked robot take so much longer (%), where nobody has measured it; a mark begins so long before the end (s). */
const usual = { slowdown: 30, from: 60 }

/** Roles for winning alone, since there are no ranking points any more: against robots that were seen many times. */
export function Roles(props: {
  pack: EventPack
  /** Who plays. */
  ours: readonly string[]
  /** By number: who plays of the others. */
  others: readonly { alliance: number; robots: readonly string[] }[]
  /** Whom we meet next, where that is known. */
  next: number | null
}) {
  const { pack, ours, others, next } = props
  const texts = words().playoffs
  const { search, start, stop } = useLineup()
  const [chosen, setChosen] = useState<number | null>(null)
  const [slowdown, setSlowdown] = useState(usual.slowdown)
  const [from, setFrom] = useState(usual.from)
  const against = others.find(({ alliance }) => alliance === (chosen ?? next)) ?? others[0]
  if (!against || ours.length < 3) return null
  const { teleop } = pack.game.clock
  const request = (): LineupRequest => {
    const options = ours.map((team) => defending(pack.robots[team]!, slowdown / 100))
    const marks = slowdown > 0 ? { from: Math.min(from, teleop) } : null
    return {
      game: pack.game,
      level: pack.event.level,
      ours: options,
      theirs: [against.robots.map((team) => pack.robots[team]!)],
      roles: options.map((option) => rolesFor(option, { marks })),
      seed: 1,
      objective: 'win',
    }
  }
  const running = search.state === 'preparing' || search.state === 'running'
  return (
    <section className="sheet stack" aria-labelledby="roles">
      <h2 id="roles">{texts.roles}</h2>
      <p>{texts.rolesHow(listed(ours))}</p>
      <div className="row no-print">
        <NativeSelect
          label={texts.opponent}
          value={String(against.alliance)}
          data={others.map(({ alliance }) => ({ value: String(alliance), label: texts.numbered(alliance) }))}
          onChange={(event) => setChosen(Number(event.currentTarget.value))}
        />
        <NumberInput
          label={texts.slowdown}
          value={slowdown}
          min={0}
          max={100}
          clampBehavior="strict"
          suffix=" %"
          onChange={(value) => setSlowdown(typeof value === 'number' ? value : usual.slowdown)}
        />
        <NumberInput
          label={texts.markFrom}
          value={from}
          min={10}
          max={teleop}
          clampBehavior="strict"
          suffix=" s"
          onChange={(value) => setFrom(typeof value === 'number' ? value : usual.from)}
        />
      </div>
      <p>
        {texts.opponentSeen(listed(against.robots.map((team) => texts.seenTimes(team, pack.seen[team] ?? 0))))}{' '}
        {texts.assumed}
      </p>
      <div className="row no-print">
        {running ? (
          <>
            <Progress
              className="picks-progress"
              value={search.total > 0 ? (100 * search.done) / search.total : 0}
              aria-label={texts.searching}
            />
            <Button variant="default" onClick={stop}>
              {words().picks.stop}
            </Button>
          </>
        ) : (
          <Button variant="default" onClick={() => void start(request())}>
            {texts.search}
          </Button>
        )}
        <span role="status">{running ? texts.searching : search.state === 'failed' ? search.error?.message : ''}</span>
      </div>
      {search.found && (
        <>
          <p className="soft">{texts.foundAgainst(listed(search.found.request.theirs[0]!.map(({ name }) => name)))}</p>
          <FoundLineup found={search.found} />
        </>
      )}
    </section>
  )
}
