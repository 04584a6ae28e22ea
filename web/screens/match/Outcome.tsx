import { Later } from '../../charts/Later.tsx'
import type { Stored } from '../../data/documents.ts'
import type { Lineup } from '../../worker/protocol.ts'
import { Answer } from './Answer.tsx'
import { Bonuses } from './Bonuses.tsx'
import { Held } from './Held.tsx'
import type { Ways } from './MatchDesk.tsx'
import { Replay } from './Replay.tsx'
import { Robots } from './Robots.tsx'
import { Scores } from './Scores.tsx'
import type { MatchSetup } from './setup.ts'
import { sourceOf } from './source.ts'
import { type MatchAsk, usePlayed } from './usePlayed.ts'
import { Waiting } from './Waiting.tsx'
import { WhatIf } from './WhatIf.tsx'

/** Plays what is asked and shows what comes out: this alone is drawn anew each time that more matches have been played. */
export function Outcome(props: {
  game: Stored<'game'>
  ways: Ways
  designs: readonly Stored<'design'>[]
  setup: MatchSetup
  first: Lineup | null
  ask: MatchAsk | null
  beside: MatchAsk | null
  onChange(next: Partial<MatchSetup>): void
}) {
  const { game, ways, designs, setup, first, ask } = props
  const { replicates, precision } = setup
  const until = { replicates, precision }
  const played = usePlayed(ask, until)
  // Each of the two is played for itself, so that a change of one leaves the other as it is.
  const beside = usePlayed(props.beside, until)
  const source = (report: { replicates: number; seed: number }) => sourceOf(report, { game, ways, designs, setup })
  if (!first) return null
  const report = played.answer?.report
  const lineup = played.asked?.lineup ?? ask?.lineup
  return (
    <>
      <Answer game={game.body} played={played} until={until} source={source} />
      {report && lineup && ask && (
        <>
          <Scores report={report} />
          <Later>
            <Bonuses game={game.body} report={report} />
            <Robots game={game.body} lineup={lineup} report={report} />
          </Later>
          <Waiting game={game.body} lineup={lineup} report={report} />
          <Later>
            <Held game={game.body} report={report} ways={ways} ours={setup.ours} />
            <Replay ask={ask} ready={played.fresh && played.state !== 'running'} />
          </Later>
        </>
      )}
      <WhatIf
        setup={setup}
        ways={ways}
        onChange={props.onChange}
        first={played}
        second={beside}
        until={until}
        source={source}
      />
    </>
  )
}
