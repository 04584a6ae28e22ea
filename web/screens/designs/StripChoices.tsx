import { Button, NativeSelect } from '@mantine/core'
import type { Game, Option } from '../../../src/model/documents/types.ts'
import { placeName, spotName } from '../../words/actions.ts'
import { words } from '../../words/catalogue.ts'
import { type Cycle, cycles, type View } from './cycle.ts'

/** The whole cycle, or one of its legs. */
export function Views(props: { game: Game; option: Option; view: View; onView(view: View): void }) {
  const { game, option, view } = props
  const texts = words().strip.views
  const finishes = option.role.finishes.filter((id) => option.robot.finish[id])
  const views: { name: string; view: View }[] = [
    { name: texts.cycle, view: { show: 'cycle' } },
    { name: texts.collect, view: { show: 'collect' } },
    { name: texts.score, view: { show: 'score' } },
    ...finishes.map((finish) => ({ name: placeName(game, finish), view: { show: 'finish' as const, finish } })),
  ]
  return (
    <div className="row" role="group" aria-label={texts.label}>
      {views.map((entry) => {
        const pressed = JSON.stringify(entry.view) === JSON.stringify(view)
        return (
          <Button
            key={entry.name}
            size="compact-md"
            variant={pressed ? 'filled' : 'default'}
            aria-pressed={pressed}
            onClick={() => props.onView(entry.view)}
          >
            {entry.name}
          </Button>
        )
      })}
    </div>
  )
}

/** Which source, goal, spots and load the strip shows. */
export function CycleChoice(props: { game: Game; option: Option; cycle: Cycle; onCycle(cycle: Cycle): void }) {
  const { game, option, cycle } = props
  const texts = words().strip.cycle
  const all = cycles(game, option)
  const key = ({ source, goal, entry }: Cycle) => `${source}|${goal}|${entry}`
  const named = (candidate: Cycle) => {
    const several = (option.robot.score[candidate.goal]?.length ?? 0) > 1
    const pair = texts.pair(placeName(game, candidate.source), placeName(game, candidate.goal))
    return several ? texts.way(pair, candidate.entry + 1) : pair
  }
  const source = game.sources.find(({ id }) => id === cycle.source)
  const goal = game.goals.find(({ id }) => id === cycle.goal)
  const way = option.robot.score[cycle.goal]?.[cycle.entry]
  const goalSpots = goal?.spots.filter(({ id }) => way?.spots === 'any' || way?.spots.includes(id)) ?? []
  const most = option.robot.carries[source?.piece ?? ''] ?? 1
  return (
    <div className="row choices">
      <NativeSelect
        label={texts.label}
        value={key(cycle)}
        data={all.map((candidate) => ({ value: key(candidate), label: named(candidate) }))}
        onChange={(event) => {
          const found = all.find((candidate) => key(candidate) === event.currentTarget.value)
          if (found) props.onCycle(found)
        }}
      />
      {source && source.spots.length > 1 && (
        <NativeSelect
          label={texts.collectingAt}
          value={cycle.sourceSpot}
          data={source.spots.map(({ id }) => ({ value: id, label: spotName(game, id) }))}
          onChange={(event) => props.onCycle({ ...cycle, sourceSpot: event.currentTarget.value })}
        />
      )}
      {goalSpots.length > 1 && (
        <NativeSelect
          label={texts.scoringAt}
          value={cycle.goalSpot}
          data={goalSpots.map(({ id }) => ({ value: id, label: spotName(game, id) }))}
          onChange={(event) => props.onCycle({ ...cycle, goalSpot: event.currentTarget.value })}
        />
      )}
      {most > 1 && (
        <NativeSelect
          label={texts.pieces}
          value={String(cycle.load)}
          data={Array.from({ length: most }, (_, index) => String(index + 1))}
          onChange={(event) => props.onCycle({ ...cycle, load: Number(event.currentTarget.value) })}
        />
      )}
    </div>
  )
}
