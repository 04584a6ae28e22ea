import { lazy, memo, type ReactNode, Suspense, useCallback, useEffect, useMemo, useState } from 'react'
import { Link } from 'wouter'
import { checkRobot, within } from '../../../src/model/documents/index.ts'
import type { Game, Option, Robot } from '../../../src/model/documents/types.ts'
import type { Worth } from '../../../src/model/plan/types.ts'
import { followHardware } from '../../../src/model/timing/index.ts'
import { Later } from '../../charts/Later.tsx'
import { usePainted } from '../../charts/usePainted.ts'
import { assembleOption, firstOption } from '../../data/assemble.ts'
import type { Bodies, Stored } from '../../data/documents.ts'
import { useDebounced } from '../../data/useDebounced.ts'
import { type CautionId, Cautions } from '../../shell/Cautions.tsx'
import { type Edit, EditProvider } from '../../shell/fields/EditContext.tsx'
import { Loading } from '../../shell/states.tsx'
import { Terms } from '../../shell/Terms.tsx'
import { useUnits } from '../../units/system.ts'
import { words } from '../../words/catalogue.ts'
import { useModel } from '../../worker/useModel.ts'
import { SaveBar } from '../documents/SaveBar.tsx'
import { useEditing } from '../documents/useEditing.ts'
import { behind, linkAt, mechanismById } from '../timings/edits.ts'
import { preloadHardware } from '../timings/Hardware.tsx'
import { type Timings, TimingsProvider } from '../timings/TimingContext.ts'
import { AirNote } from './air/AirNote.tsx'
import { AirPanel } from './air/AirPanel.tsx'
import { airNotes, airProblems } from './air/airProblems.ts'
import { useAirPlan } from './air/useAirPlan.ts'
import { BesidePanel } from './BesidePanel.tsx'
import { BudgetForm } from './BudgetForm.tsx'
import { budgetNotes } from './budget.ts'
import { CanForm } from './CanForm.tsx'
import { type Cycle, shownLegs, stillThere, teleopStart, typicalCycle, type View } from './cycle.ts'
import { FromFieldNote } from './FromFieldNote.tsx'
import { LegForm } from './LegForm.tsx'
import { PointsPanel } from './PointsPanel.tsx'
import { PolicyPanel } from './PolicyPanel.tsx'
import { RobotForm } from './RobotForm.tsx'
import { routineNotes } from './routines/notes.ts'
import { RoutinesPanel } from './routines/RoutinesPanel.tsx'
import { StripPanel } from './StripPanel.tsx'
import { useLive } from './useLive.ts'
import { WayToPlay } from './WayToPlay.tsx'
import './designs.css'

const OpenTiming = lazy(() => import('../timings/OpenTiming.tsx'))
const MechanismList = memo(lazy(() => import('../timings/MechanismList.tsx')))
const BehindNotice = lazy(() => import('../timings/BehindNotice.tsx'))

const ofAll: CautionId[] = ['spinning', 'air', 'energy', 'lifted']
/** Where the panel of stored air has its own. */
const butAir: CautionId[] = ['spinning', 'energy', 'lifted']
const noWorth: Worth[] = []

export interface Selected {
  leg: string
  stage: string
}

const playedBy = (game: Game, way: Stored<'option'> | undefined, robot: Robot): Option =>
  way ? assembleOption(way.body, robot) : firstOption(game, robot)

/** Stages and the drive follow the mechanisms that their numbers come from. */
const follow = (before: Bodies['design'], after: Bodies['design']): Bodies['design'] => {
  const robot = followHardware(before.robot, after.robot)
  return robot === after.robot ? after : { ...after, robot }
}

/** What the fields of a design share, and which timing is open beneath its strip. */
const Providers = (props: { edit: Edit; timings: Timings; children: ReactNode }) => (
  <EditProvider value={props.edit}>
    <TimingsProvider value={props.timings}>{props.children}</TimingsProvider>
  </EditProvider>
)

export function DesignEditor(props: { stored: Stored<'design'>; game: Game; ways: Stored<'option'>[]; old: boolean }) {
  const { stored, game, ways, old } = props
  const texts = words().designs.screen
  const editing = useEditing({ kind: 'design', stored, old, follow })
  const { draft, unread } = editing
  const [wayId, setWayId] = useState(ways[0]?.id ?? null)
  const [view, setView] = useState<View>({ show: 'cycle' })
  const [chosen, setChosen] = useState<Cycle | null>(null)
  const [preview, setPreview] = useState<Robot | null>(null)
  const [selected, setSelected] = useState<Selected | null>(null)
  const robot = draft.value.robot
  const [timing, setTiming] = useState<string | null>(null)
  const opened = mechanismById(robot, timing ?? undefined)?.id ?? null
  const lagging = useMemo(() => behind(robot), [robot])

  const way = ways.find(({ id }) => id === wayId)
  const option = useMemo(() => playedBy(game, way, robot), [game, way, robot])
  const saved = useMemo(() => playedBy(game, way, draft.saved.robot), [game, way, draft.saved])
  const system = useUnits()
  // biome-ignore lint/correctness/useExhaustiveDependencies: pressures are said in the units chosen
  const problems = useMemo(
    () => within(['robot'], [...checkRobot(game, robot), ...airProblems(robot)]),
    [game, robot, system],
  )
  // Said beside the fields; unlike problems they forbid nothing.
  const notes = useMemo(
    () =>
      within(
        ['robot'],
        [...routineNotes(game, robot, system), ...budgetNotes(game, robot, system), ...airNotes(robot)],
      ),
    [game, robot, system],
  )
  const sound = problems.length === 0 && unread.length === 0

  // A trip that the robot no longer does is not shown any more.
  const cycle = useMemo(() => (chosen ? stillThere(game, option, chosen) : null), [game, option, chosen])
  const legs = useMemo(() => (cycle ? shownLegs(game, cycle, view) : []), [game, cycle, view])
  // While a bar is dragged the points are those of the robot that it would be.
  const played = useMemo(() => (preview ? { ...option, robot: preview } : option), [option, preview])
  const live = useLive(
    useMemo(() => (problems.length === 0 ? { game, option: played, legs } : null), [problems, game, played, legs]),
  )
  useEffect(preloadHardware, [])
  // The first answer of the plan chooses the cycle that is shown; after that only the person does.
  useEffect(() => {
    if (!chosen && live.exact) setChosen(typicalCycle(game, live.exact.option, live.exact.plan.policy))
  }, [chosen, live.exact, game])

  // Long work begins when the design has stood still and its own plan is on the screen, and ends with the next edit: the
  // edit's points need the processor.
  const still = useDebounced(option, 900)
  const painted = usePainted(live.exact)?.option
  const settled = problems.length === 0 && live.error === null && still === option && painted === option ? option : null
  // Apart, because the call takes a scan of many plans, and the bars do not wait for it.
  const report = useModel(
    'report',
    useMemo(() => (settled ? { game, option: settled, with: ['worth'] } : null), [game, settled]),
  )
  const called = useModel(
    'report',
    useMemo(() => (settled ? { game, option: settled, with: ['call'] } : null), [game, settled]),
  )

  const air = useAirPlan(game, settled, problems.length > 0 || live.error !== null)

  const stopwatch = `/designs/${stored.id}/stopwatch`
  const source = texts.source(robot.name, draft.base, draft.dirty, game.name)
  const stale = !sound || live.error !== null
  const drawn = useMemo(() => live.legs.map(({ leg }) => leg), [live.legs])
  // The timing that is open is that of the bar that is chosen, where it has one.
  const select = useCallback(
    (next: Selected) => {
      if (opened !== null && (next.leg !== selected?.leg || next.stage !== selected.stage))
        setTiming(linkAt(robot, drawn.find(({ id }) => id === next.leg)?.trip, next.stage) ?? null)
      setSelected(next)
    },
    [opened, selected, robot, drawn],
  )
  // The same objects while nothing was edited: the model's answers, which come one after the other, then draw only what shows them.
  const timings = useMemo(() => ({ game, robot, open: opened, onOpen: setTiming }), [game, robot, opened])
  const { fields } = editing
  const edit = useMemo(() => fields([...problems, ...notes]), [fields, problems, notes])
  return (
    <Providers edit={edit} timings={timings}>
      <div className="stack wide">
        <div className="row spread">
          <div>
            <p className="label">{texts.label(game.name)}</p>
            <h1>{robot.name || texts.noName}</h1>
            <p>
              <Link href={stopwatch}>{texts.stopwatch}</Link>
            </p>
          </div>
          <SaveBar of={editing} href="/designs" />
        </div>
        <Terms
          of={['cycle', 'leg', 'stage', 'float', 'worth', 'expectedPoints', 'pace', 'form', 'policy', 'routine']}
        />
        {stored.body.fromField && <FromFieldNote of={stored.body.fromField} game={game} robot={robot} />}
        <WayToPlay
          game={game}
          design={stored.id}
          robot={robot}
          ways={ways}
          chosen={way?.id ?? null}
          onChoose={setWayId}
        />
        {lagging.length > 0 && (
          <Suspense>
            <BehindNotice found={lagging} />
          </Suspense>
        )}
        <PointsPanel
          game={game}
          option={option}
          saved={saved}
          edited={draft.dirty || preview !== null}
          live={live}
          report={report.data}
          call={called.data?.call ?? null}
          callFresh={settled !== null && !called.isPlaceholderData}
          reportFresh={settled !== null && !report.isPlaceholderData}
          stale={stale}
          source={source}
          note={robot.air && <AirNote asked={air} />}
        />
        <StripPanel
          game={game}
          option={option}
          live={live}
          worth={report.data?.worth ?? noWorth}
          view={view}
          onView={setView}
          cycle={cycle}
          onCycle={setChosen}
          selected={selected}
          onSelect={select}
          points={opened === null ? null : live.total}
          onPreview={setPreview}
          stale={stale}
          source={source}
          problems={[...unread, ...problems.map(({ message }) => message), ...(live.error ? [live.error.message] : [])]}
        >
          {drawn.length > 0 && (
            <Later>
              <LegForm
                design={stored.id}
                game={game}
                robot={robot}
                legs={drawn}
                selected={selected}
                onSelect={select}
              />
            </Later>
          )}
          {opened !== null && (
            <Suspense fallback={<Loading what={words().timings.what} />}>
              <OpenTiming id={opened} {...{ robot, game, option, source, stopwatch }} onClose={() => setTiming(null)} />
            </Suspense>
          )}
        </StripPanel>
        {cycle && (
          <Later>
            <BesidePanel design={stored.id} game={game} option={played} {...{ live, cycle, view, source }} />
          </Later>
        )}
        <PolicyPanel
          game={game}
          start={JSON.stringify(teleopStart(option))}
          plan={live.exact?.plan ?? null}
          stale={stale}
        />
        <RoutinesPanel game={game} robot={robot} option={option} ways={ways} source={source} />
        <Suspense>
          <MechanismList />
        </Suspense>
        <AirPanel game={game} robot={robot} asked={air} source={source} />
        <BudgetForm game={game} robot={robot} />
        <div className="stack">
          <CanForm game={game} robot={robot} />
          <RobotForm game={game} robot={robot} />
        </div>
        <Cautions which={robot.air ? butAir : ofAll} />
      </div>
    </Providers>
  )
}
