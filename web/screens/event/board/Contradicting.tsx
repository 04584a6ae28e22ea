import type { Contradiction } from '../../../../src/model/scouting/contradictions.ts'
import type { StandsPack } from '../../../codes/standsPack.ts'
import { words } from '../../../words/catalogue.ts'
import { nameOfMatch, nameOfPerson } from '../matchNames.ts'
import type { Looked } from '../records/RecordPanel.tsx'
import { SwapForm } from './SwapForm.tsx'
import type { Board } from './useBoard.ts'

/** A contradiction in a sentence. */
function sentence(pack: StandsPack, board: Board, found: Contradiction): string {
  const say = words().board.contradiction
  const goalName = (id: string) => pack.game.body.goals.find((goal) => goal.id === id)?.name ?? id
  switch (found.kind) {
    case 'moreThanCollected':
      return say.moreThanCollected(found.out, found.in)
    case 'overCapacity':
      return say.overCapacity(goalName(found.goal), found.scored, found.capacity)
    case 'finishFull':
      return say.finishFull(
        pack.game.body.finishes.find(({ id }) => id === found.finish)?.name ?? found.finish,
        found.robots,
        found.slots,
      )
    case 'absentButSeen':
      return say.absentButSeen
    case 'afterStop':
      return say.afterStop(found.stopped, found.elapsed)
    case 'outsideMatch':
      return say.outsideMatch(found.elapsed, found.end)
    case 'scoutsDiffer':
      return say.scoutsDiffer(goalName(found.goal), found.low, found.high)
    case 'sameScoutTwice':
      return say.sameScoutTwice(nameOfPerson({ people: board.people }, found.scout))
    case 'notInMatch':
      return say.notInMatch
    case 'unknownMatch':
      return say.unknownMatch
  }
}

/** Records that can not all be right, the exchange of two robots, and what has been corrected. */
export function Contradicting(props: { pack: StandsPack; board: Board; event: string; look(looked: Looked): void }) {
  const { pack, board, event } = props
  const texts = words().board
  const list = board.contradictions as unknown as Contradiction[]
  return (
    <section className="sheet stack" aria-labelledby="contradicting">
      <h2 id="contradicting">{texts.contradicting}</h2>
      {list.length === 0 && <p className="soft">{texts.nothingContradicts}</p>}
      <ul>
        {list.map((each) => (
          <li key={`${each.kind}${each.records.join()}${'goal' in each ? each.goal : ''}`}>
            {texts.about(nameOfMatch(pack, each.match), each.team)} {sentence(pack, board, each)}{' '}
            <button
              type="button"
              className="opens"
              onClick={() =>
                props.look(
                  each.team === null
                    ? { match: each.match, team: null, ids: each.records }
                    : { match: each.match, team: each.team, ids: null },
                )
              }
            >
              {texts.look(each.records.length)}
            </button>
          </li>
        ))}
      </ul>
      <SwapForm pack={pack} board={board} event={event} />
      <h3>{texts.corrections}</h3>
      {board.corrections.length === 0 && <p className="soft">{texts.noCorrections}</p>}
      <ul>
        {board.corrections.map(({ record, match, team, reason }) => (
          <li key={record}>
            {texts.about(nameOfMatch(pack, match), team)} {reason}
          </li>
        ))}
      </ul>
    </section>
  )
}
