import { NativeSelect } from '@mantine/core'
import { useMemo, useRef } from 'react'
import { useLocation } from 'wouter'
import type { Option } from '../../../src/model/documents/types.ts'
import { assembleOption } from '../../data/assemble.ts'
import type { Stored } from '../../data/documents.ts'
import { useDebounced } from '../../data/useDebounced.ts'
import { PartList } from '../../shell/parts/PartList.tsx'
import { Terms } from '../../shell/Terms.tsx'
import { words } from '../../words/catalogue.ts'
import type { Lineup } from '../../worker/protocol.ts'
import { Clashes } from './Clashes.tsx'
import { LineupPart } from './lineup/LineupPart.tsx'
import { levelsOf } from './names.ts'
import { OnServer } from './OnServer.tsx'
import { Outcome } from './Outcome.tsx'
import { SetupForm } from './SetupForm.tsx'
import { isComplete, type Sides, sameSides } from './setup.ts'
import type { MatchAsk } from './usePlayed.ts'
import { useSetup } from './useSetup.ts'

export type Ways = readonly Stored<'option'>[]

/** One match: who plays, what comes out, one match to look at, and a second line-up beside it. */
export function MatchDesk(props: {
  game: Stored<'game'>
  games: readonly { id: string; name: string }[]
  ways: Ways
  designs: readonly Stored<'design'>[]
}) {
  const { game, ways, designs } = props
  const text = words().match
  const [, go] = useLocation()
  const screen = useRef<HTMLDivElement>(null)
  const levels = levelsOf(game.body)
  const { setup, change, undo } = useSetup(game.id, ways, levels)
  const options = useMemo(
    () =>
      new Map(
        ways.flatMap((way): [string, Option][] => {
          const design = designs.find(({ id }) => id === way.body.design)
          return design ? [[way.id, assembleOption(way.body, design.body.robot)]] : []
        }),
      ),
    [ways, designs],
  )
  const { level, seed, precision } = setup
  const first = lineupOf(setup, options)
  // A second line-up that is the first still says nothing that its copy does not.
  const second = setup.other && !sameSides(setup.other, setup) ? lineupOf(setup.other, options) : null
  const of = { game: game.body, level, seed }
  const ask = useAsk(first && { ...of, lineup: first })
  const beside = useAsk(second && { ...of, lineup: second })
  return (
    <div className="stack wide" ref={screen}>
      <div className="row spread">
        <div>
          <p className="label">{text.label(game.name)}</p>
          <h1>{text.title}</h1>
        </div>
        {props.games.length > 1 && (
          <NativeSelect
            className="no-print"
            label={text.game}
            value={game.id}
            data={props.games.map(({ id, name }) => ({ value: id, label: name }))}
            onChange={(event) => go(`/match/${event.currentTarget.value}`)}
          />
        )}
      </div>
      <p className="soft">{text.intro}</p>
      <Terms
        of={['winProbability', 'rankingPoints', 'standardError', 'sharedLuck', 'holdSeconds', 'lineup', 'marking']}
      />
      <PartList label={text.parts.label} names={partNames()} of={screen} />
      <SetupForm setup={setup} ways={ways} levels={levels} onChange={change} undo={undo} />
      {first && <Clashes game={game.body} lineup={first} />}
      <Outcome {...{ game, ways, designs, setup, first, ask, beside }} onChange={change} />
      {ask && <OnServer ask={ask} precision={precision} />}
      <LineupPart game={game.body} setup={setup} ways={ways} options={options} onChange={change} />
    </div>
  )
}

/** What is asked, as a string in between, so that what is drawn anew asks nothing anew. */
function useAsk(ask: MatchAsk | null): MatchAsk | null {
  const key = useDebounced(ask ? JSON.stringify(ask) : '', 300)
  return useMemo(() => (key === '' ? null : JSON.parse(key)), [key])
}

function lineupOf(sides: Sides, options: ReadonlyMap<string, Option>): Lineup | null {
  if (!isComplete(sides)) return null
  const found = (ids: Sides['ours']) => ids.flatMap((id) => options.get(id ?? '') ?? [])
  const lineup = { ours: found(sides.ours), theirs: found(sides.theirs) }
  return lineup.ours.length === 3 && lineup.theirs.length === 3 ? lineup : null
}

/** The screen's parts by the id of their heading. */
const partNames = () => {
  const { label: _, ...names } = words().match.parts
  return Object.entries(names).map(([part, name]) => ({ id: `match-${part}`, name }))
}
