import { Button, NativeSelect } from '@mantine/core'
import { type ReactNode, useMemo } from 'react'
import type { Game, Option } from '../../../src/model/documents/types.ts'
import { mean } from '../../../src/model/duration/index.ts'
import type { Worth } from '../../../src/model/plan/types.ts'
import { CycleStrip } from '../../charts/CycleStrip.tsx'
import { Figure } from '../../charts/Figure.tsx'
import { Measured } from '../../charts/Measured.tsx'
import { type StripBar, stripLayout } from '../../charts/stripLayout.ts'
import { CameAbout } from '../../shell/CameAbout.tsx'
import { useEdit } from '../../shell/fields/EditContext.tsx'
import { Loading } from '../../shell/states.tsx'
import { placeName, spotName } from '../../words/actions.ts'
import { words } from '../../words/catalogue.ts'
import { explainWorth } from '../../words/explainMoves.ts'
import { percent, points, seconds } from '../../words/format.ts'
import { noteEdit } from '../../worker/latency.ts'
import { type Cycle, cycles, type ShownLeg, sameWorthLeg, stageNames, tripOf, type View } from './cycle.ts'
import type { Selected } from './DesignEditor.tsx'
import { canMove, withMean } from './durations.ts'
import type { Live } from './useLive.ts'

export function StripPanel(props: {
  game: Game
  option: Option
  live: Live
  worth: Worth[]
  view: View
  onView(view: View): void
  cycle: Cycle | null
  onCycle(cycle: Cycle): void
  selected: Selected | null
  onSelect(selected: Selected): void
  stale: boolean
  problems: string[]
  source: string
  children: ReactNode
}) {
  const { game, option, live, worth } = props
  const { robot } = option
  const edit = useEdit()
  const layout = useMemo(
    () =>
      stripLayout(
        live.legs.map(({ leg, report }) => ({
          id: leg.id,
          name: leg.name,
          report,
          stageNames: stageNames(tripOf(robot, leg)),
          worth: Object.fromEntries(
            worth
              .filter((entry) => sameWorthLeg(entry.leg, leg.worth))
              .map((entry) => [entry.stage, entry.pointsPerSecond]),
          ),
        })),
      ),
    [live.legs, robot, worth],
  )
  const durationAt = (bar: StripBar) =>
    barDuration(
      live.legs.map(({ leg }) => leg),
      option,
      bar,
    )
  const onMean = (bar: StripBar, asked: number) => {
    const found = durationAt(bar)
    if (!found || !canMove(found.duration)) return
    noteEdit()
    edit.set(['robot', ...found.place], withMean(found.duration, asked / found.times), `bar/${bar.leg}/${bar.stage}`)
  }
  const onStep = (bar: StripBar, step: number) => {
    const found = durationAt(bar)
    if (found) onMean(bar, Math.max(0, Math.round((mean(found.duration) * found.times + step) * 10) / 10))
  }
  return (
    <section className="sheet stack" aria-labelledby="strip-title">
      <div className="row spread">
        <h2 id="strip-title">Cycle strip</h2>
        <Views {...props} />
      </div>
      {props.cycle && <CycleChoice game={game} option={option} cycle={props.cycle} onCycle={props.onCycle} />}
      {props.problems.length > 0 && (
        <div role="alert" className="loss">
          <p>
            {layout.bars.length > 0
              ? 'The strip shows the last design that could be computed:'
              : 'This design can not be computed:'}
          </p>
          <ul>
            {props.problems.slice(0, 4).map((problem) => (
              <li key={problem}>{problem}</li>
            ))}
          </ul>
        </div>
      )}
      {layout.bars.length === 0 ? (
        props.problems.length === 0 && <Loading what="the strip" />
      ) : (
        <Figure title="Where the time of a cycle goes" hideTitle table={tableOf(layout.bars)}>
          <Measured>
            {(width) => (
              <CycleStrip
                layout={layout}
                width={width}
                stale={props.stale}
                handlers={{
                  selected: props.selected,
                  onSelect: ({ leg, stage }) => props.onSelect({ leg, stage }),
                  onMean: edit.readOnly ? undefined : onMean,
                  onStep,
                  canChange: (bar) => {
                    const found = durationAt(bar)
                    return found !== null && canMove(found.duration)
                  },
                }}
              />
            )}
          </Measured>
        </Figure>
      )}
      <p className="soft small">
        Solid bars are the critical path: what the robot waits for. Pale bars have float, hatched. ‘+0.8/s’: points a
        match that a second less there is worth. Drag a bar’s end, or use the arrow keys on it.
        {layout.sections.some(({ waiting }) => waiting >= 0.1) &&
          ` On average a leg takes longer than its bars (${layout.sections
            .filter(({ waiting }) => waiting >= 0.1)
            .map(({ name, waiting }) => `${name}: ${seconds(waiting)}`)
            .join('; ')}), because stages wait for whichever is late, and tries are repeated.`}{' '}
        {layout.bars.some((bar) => bar.worth !== null) && (
          <CameAbout explain={() => explainWorth(layout.bars, props.source)}>
            {words().explain.openedOf(words().explain.worth.title)}
          </CameAbout>
        )}
      </p>
      {props.children}
    </section>
  )
}

/** The Duration behind a bar, and how often the bar holds it (once per piece of the load). */
function barDuration(legs: readonly ShownLeg[], option: Option, bar: StripBar) {
  const leg = legs.find(({ id }) => id === bar.leg)
  const trip = leg && tripOf(option.robot, leg)
  if (!leg || !trip || bar.stage === 'drive') return null
  if ('whole' in trip) return { duration: trip.whole, place: [...leg.trip, 'whole'], times: 1 }
  const index = trip.stages.findIndex(({ id }) => id === bar.stage)
  const stage = trip.stages[index]
  if (!stage) return null
  return {
    duration: stage.duration,
    place: [...leg.trip, 'stages', index, 'duration'],
    times: stage.each ? leg.load : 1,
  }
}

const tableOf = (bars: readonly StripBar[]) => ({
  head: ['Stage', 'Begins', 'Takes', 'Float', 'On the longest path', 'Worth a second'],
  rows: bars.map((bar) => [
    bar.name,
    seconds(bar.start),
    seconds(bar.mean),
    seconds(bar.floatUntil - bar.finish),
    percent(bar.criticality),
    bar.worth === null ? '–' : `${points(bar.worth)} points`,
  ]),
})

function Views(props: { game: Game; option: Option; view: View; onView(view: View): void }) {
  const { game, option, view } = props
  const finishes = option.role.finishes.filter((id) => option.robot.finish[id])
  const views: { name: string; view: View }[] = [
    { name: 'Whole cycle', view: { show: 'cycle' } },
    { name: 'Collect', view: { show: 'collect' } },
    { name: 'Score', view: { show: 'score' } },
    ...finishes.map((finish) => ({ name: placeName(game, finish), view: { show: 'finish' as const, finish } })),
  ]
  return (
    <div className="row" role="group" aria-label="Shown legs">
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

function CycleChoice(props: { game: Game; option: Option; cycle: Cycle; onCycle(cycle: Cycle): void }) {
  const { game, option, cycle } = props
  const all = cycles(game, option)
  const key = ({ source, goal, entry }: Cycle) => `${source}|${goal}|${entry}`
  const words = (candidate: Cycle) => {
    const several = (option.robot.score[candidate.goal]?.length ?? 0) > 1
    return `${placeName(game, candidate.source)} to ${placeName(game, candidate.goal)}${several ? `, way ${candidate.entry + 1}` : ''}`
  }
  const source = game.sources.find(({ id }) => id === cycle.source)
  const goal = game.goals.find(({ id }) => id === cycle.goal)
  const way = option.robot.score[cycle.goal]?.[cycle.entry]
  const goalSpots = goal?.spots.filter(({ id }) => way?.spots === 'any' || way?.spots.includes(id)) ?? []
  const most = option.robot.carries[source?.piece ?? ''] ?? 1
  return (
    <div className="row choices">
      <NativeSelect
        label="Cycle"
        value={key(cycle)}
        data={all.map((candidate) => ({ value: key(candidate), label: words(candidate) }))}
        onChange={(event) => {
          const found = all.find((candidate) => key(candidate) === event.currentTarget.value)
          if (found) props.onCycle(found)
        }}
      />
      {source && source.spots.length > 1 && (
        <NativeSelect
          label="Collecting at"
          value={cycle.sourceSpot}
          data={source.spots.map(({ id }) => ({ value: id, label: spotName(game, id) }))}
          onChange={(event) => props.onCycle({ ...cycle, sourceSpot: event.currentTarget.value })}
        />
      )}
      {goalSpots.length > 1 && (
        <NativeSelect
          label="Scoring at"
          value={cycle.goalSpot}
          data={goalSpots.map(({ id }) => ({ value: id, label: spotName(game, id) }))}
          onChange={(event) => props.onCycle({ ...cycle, goalSpot: event.currentTarget.value })}
        />
      )}
      {most > 1 && (
        <NativeSelect
          label="Pieces"
          value={String(cycle.load)}
          data={Array.from({ length: most }, (_, index) => String(index + 1))}
          onChange={(event) => props.onCycle({ ...cycle, load: Number(event.currentTarget.value) })}
        />
      )}
    </div>
  )
}
