import { Button, NativeSelect } from '@mantine/core'
import type { Game, Option } from '../../../../src/model/documents/types.ts'
import type { LineupRequest } from '../../../../src/model/match/lineup/types.ts'
import { Fold } from '../../../shell/parts/Fold.tsx'
import { Trouble } from '../../../shell/states.tsx'
import { words } from '../../../words/catalogue.ts'
import { percent, plain } from '../../../words/format.ts'
import type { Ways } from '../MatchDesk.tsx'
import { positionName } from '../names.ts'
import { isComplete, type MatchSetup } from '../setup.ts'
import { FoundLineup } from './FoundLineup.tsx'
import { type Choice, type LineupSetup, noLineup, type Setting } from './lineupSetup.ts'
import { Rivals, weightOf } from './Rivals.tsx'
import { RobotChoices } from './RobotChoices.tsx'
import { firstChoice, mayMark, rolesOf, windowOf, withAble } from './roles.ts'
import { type Search, useLineup } from './useLineup.ts'
import { useTake } from './useTake.ts'

/** Which of our robots does what: what each may do, against whom, and the line-up that is best. */
export function LineupPart(props: {
  game: Game
  setup: MatchSetup
  ways: Ways
  options: ReadonlyMap<string, Option>
  /** `field`: what is being typed in. */
  onChange(next: Partial<MatchSetup>, field?: string): void
}) {
  const { game, setup, ways, options, onChange } = props
  const text = words().lineup
  const lookedFor = setup.lineup ?? noLineup
  const { objective, weight, further } = lookedFor
  const put = (next: Partial<LineupSetup>, field?: string) => onChange({ lineup: { ...lookedFor, ...next } }, field)
  const { search, start, stop } = useLineup()
  const taking = useTake(game, ways, onChange)
  const ours = setup.ours.flatMap((id) => options.get(id ?? '') ?? [])
  // Not while a way to play that was just saved is on its way; what was found stays meanwhile.
  const ready = ours.length === 3
  const choice = (position: number): Choice => {
    const of = setup.ours[position] ?? ''
    const chosen = lookedFor.choices[position]
    const option = ours[position]!
    return chosen?.of === of ? withAble(chosen, option, game) : { ...firstChoice(option, game), of }
  }
  const choices = ours.map((_, position) => choice(position))
  const roles = ours.map((option, position) => rolesOf(option, choices[position]!, game))
  const count = roles.reduce((product, own) => product * own.length, 1)
  const settings: Setting[] = [{ slots: setup.theirs, weight }, ...further]
  const weights = settings.map((setting) => weightOf(setting))
  const open = choices.findIndex((each) => mayMark(each) && windowOf(each, game) === null)
  const wrong = !ready
    ? words().match.setup.incomplete
    : open >= 0
      ? text.badWindow(positionName('ours', open))
      : wrongWith(settings, weights)
  const request: LineupRequest = {
    game,
    ours,
    theirs: settings.map(({ slots }) => slots.flatMap((id) => options.get(id ?? '') ?? [])),
    weights: weights.map((value) => value ?? 0),
    roles,
    seed: setup.seed,
    objective,
    ...(setup.level === null ? {} : { level: setup.level }),
  }
  const { found } = search
  const running = search.state === 'preparing' || search.state === 'running'
  const fresh = found !== null && JSON.stringify(found.request) === JSON.stringify(request)
  const { taken } = taking
  return (
    <section className="sheet stack" aria-labelledby="match-lineup">
      <Fold id="match-lineup" title={text.title} level={2} open={setup.lineup !== null}>
        <p className="soft small">{text.help}</p>
        <div className="columns no-print">
          {(ready ? ours : []).map((option, position) => (
            <RobotChoices
              key={positionName('ours', position)}
              game={game}
              option={option}
              position={position}
              choice={choices[position]!}
              onChange={(next, field) =>
                put(
                  { choices: [0, 1, 2].map((at) => (at === position ? next : (lookedFor.choices[at] ?? null))) },
                  field,
                )
              }
            />
          ))}
        </div>
        <div className="no-print">
          <Rivals
            settings={settings}
            ways={ways}
            onChange={([first, ...rest], field) => put({ weight: first!.weight, further: rest }, field)}
          />
        </div>
        <div className="row no-print" style={{ alignItems: 'end' }}>
          <NativeSelect
            label={text.objective}
            value={objective}
            data={(['win', 'rankingPoints'] as const).map((value) => ({ value, label: text.objectives[value] }))}
            onChange={(event) => put({ objective: event.currentTarget.value as LineupRequest['objective'] })}
          />
          {running ? (
            <Button variant="default" onClick={stop}>
              {text.stop}
            </Button>
          ) : (
            <Button disabled={wrong !== null} onClick={() => void start(request)}>
              {text.search}
            </Button>
          )}
          <p className="soft small">{wrong ?? text.many(plain(count), count > 64)}</p>
        </div>
        <Progress search={search} />
        {search.state === 'failed' && (
          <Trouble title={text.failed} error={search.error} retry={() => void start(request)} />
        )}
        {found && (
          <div className={fresh ? 'stack' : 'stack outdated'}>
            {!fresh && <p className="soft small">{text.old}</p>}
            <FoundLineup found={found} />
            {fresh && !running && !taken && (
              <div className="row no-print">
                <Button
                  variant="default"
                  loading={taking.busy}
                  onClick={() => void taking.take(setup.ours, found.report.best.roles)}
                >
                  {text.take}
                </Button>
                <span className="soft small">{text.takeHelp}</span>
              </div>
            )}
          </div>
        )}
        {taken && (
          <div className="row no-print" role="status">
            <span>{taken.made.length > 0 ? text.takenWith(taken.made.map(({ name }) => name)) : text.taken}</span>
            <Button variant="default" loading={taking.busy} onClick={() => void taking.back(taken)}>
              {text.back}
            </Button>
          </div>
        )}
        {taking.error && <Trouble title={text.notTaken} error={taking.error} />}
      </Fold>
    </section>
  )
}

/** Why nothing can be looked for yet; null where it can. */
function wrongWith(settings: readonly Setting[], weights: readonly (number | null)[]): string | null {
  const text = words().lineup
  const open = settings.findIndex(({ slots }) => !isComplete({ ours: slots, theirs: slots }))
  if (open >= 0) return text.incomplete(open + 1)
  if (weights.some((value) => value === null)) return text.badWeight
  return weights.some((value) => (value ?? 0) > 0) ? null : text.noWeight
}

function Progress({ search }: { search: Search }) {
  const text = words().lineup
  const { state, done, total, found } = search
  if (state === 'idle' || state === 'failed' || state === 'done') return null
  return (
    <div className="stack no-print" style={{ gap: '0.4rem' }}>
      {state !== 'stopped' && (
        <progress
          max={Math.max(1, total)}
          value={done > 0 ? done : undefined}
          aria-label={text.progress}
          style={{ width: '100%' }}
        />
      )}
      <p className="soft small" role="status">
        {state === 'preparing'
          ? text.preparing
          : state === 'running'
            ? text.running(percent(done / total), found ? plain(found.left) : null)
            : found
              ? text.stopped(plain(found.left), plain(found.report.replicates))
              : text.stoppedEarly}
      </p>
    </div>
  )
}
