import { Button, Progress } from '@mantine/core'
import type { Game } from '../../../../src/model/documents/types.ts'
import type { Choice, Need, PickOrder } from '../../../../src/model/picks/order/types.ts'
import { useDrawn } from '../../../charts/useDrawn.ts'
import { words } from '../../../words/catalogue.ts'
import { listed, percent, points } from '../../../words/format.ts'
import type { OrderNow, Refining } from './useOrder.ts'
import '../estimates/interval.css'

/** 'Gantry': what a need is about. */
function partName(game: Game, { part }: Need): string {
  const texts = words().picks
  if (part.kind === 'goal') return game.goals.find(({ id }) => id === part.goal)?.name ?? part.goal
  return part.kind === 'autonomous' ? texts.autonomous : texts.finishing
}

/** '+4.2': percentage points. */
export const gainSaid = (gain: number): string =>
  words().picks.percentagePoints(`${gain < 0 ? '−' : '+'}${points(Math.abs(100 * gain))}`)

/**
 * Chance that a choice is better than the next. Where draws would be sure of a difference that is within the luck of the simulation,
 * it is not told: two teams who would sit out alike differ by nothing else.
 */
function betterSaid({ better, gain, error }: Choice, next: Choice | undefined): string {
  if (better === null || !next) return '–'
  const withinLuck = gain.mean - next.gain.mean < 2 * Math.hypot(error, next.error)
  return withinLuck && Math.abs(better - 0.5) > 0.25 ? words().picks.even : percent(better)
}

/** Whom to invite first, and why. */
export function OrderList(props: {
  game: Game
  names: ReadonlyMap<string, string>
  /** Null: there is a first, rough order alone. */
  now: OrderNow | null
  order: PickOrder
  fresh: boolean
  refining: Refining
  refine(): void
  stop(): void
  /** Whether we invite at all, as it stands. */
  captain: boolean
  /** Before the selection: we are taken as the last captain, though we are none by the present ranks. */
  supposed: boolean
  /** Invites and takes in one tap, when it is our turn. */
  take: ((team: string) => void) | null
}) {
  const { game, names, now, order, fresh, refining, captain, take } = props
  const texts = words().picks
  const tasks = now?.answer.tasks ?? []
  useDrawn(now ? 'pick-order' : 'rough-order', now?.answer ?? order)
  const chances = new Map((now?.answer.waiting ?? []).map(({ team, chance }) => [team, chance]))
  const most = Math.max(0.02, ...order.choices.map(({ gain }) => Math.max(Math.abs(gain.low), Math.abs(gain.high))))
  return (
    <section className="sheet stack" aria-labelledby="order" aria-busy={!fresh}>
      <h2 id="order">{texts.order}</h2>
      <p>
        {order.alliance.length > 1 ? texts.ourAlliance(listed(order.alliance)) : texts.alone(order.us)}{' '}
        {order.replacement !== null && texts.against(order.replacement, { captain, free: order.replacementFree })}
      </p>
      {(props.supposed || !captain) && <p>{props.supposed ? texts.asLastCaptain : texts.noCaptain}</p>}
      {order.needs.length > 0 && (
        <ul>
          {order.needs.map((need) => (
            <li key={JSON.stringify(need.part)}>
              {texts.need(partName(game, need), points(need.short.mean), percent(need.chance))}
            </li>
          ))}
        </ul>
      )}
      <div className="row no-print">
        {refining.state === 'running' ? (
          <>
            <Progress className="picks-progress" value={100 * refining.done} aria-label={texts.refining} />
            <Button variant="default" onClick={props.stop}>
              {texts.stop}
            </Button>
          </>
        ) : (
          <Button variant="default" onClick={props.refine} disabled={!fresh || tasks.length === 0}>
            {refining.state === 'done' ? texts.refined : texts.refine}
          </Button>
        )}
        <span role="status">
          {!fresh
            ? now
              ? texts.reordering
              : texts.rough
            : tasks.length === 0
              ? texts.tooFewToSimulate
              : refining.state === 'idle'
                ? ''
                : texts.states[refining.state]}
        </span>
      </div>
      {order.choices.length === 0 ? (
        <p>{texts.noChoices}</p>
      ) : (
        <div className="scroll" tabIndex={0} role="region" aria-label={texts.orderTable}>
          <table className="tide picks-order">
            <thead>
              <tr>
                <th scope="col" className="figure">
                  {texts.place}
                </th>
                <th scope="col">{texts.team}</th>
                <th scope="col">{texts.gain}</th>
                <th scope="col" className="figure">
                  {texts.better}
                </th>
                <th scope="col" className="figure">
                  {texts.stillFree}
                </th>
                <th scope="col">{texts.answers}</th>
              </tr>
            </thead>
            <tbody>
              {order.choices.map((choice, k) => (
                <tr key={choice.team}>
                  <td className="figure">{k + 1}</td>
                  <th scope="row">
                    {take ? (
                      <button
                        type="button"
                        className="opens"
                        onClick={() => take(choice.team)}
                        aria-label={texts.takeTeam(choice.team)}
                      >
                        {choice.team}
                      </button>
                    ) : (
                      choice.team
                    )}{' '}
                    <span className="picks-name">{names.get(choice.team)}</span>
                  </th>
                  <td>
                    <Gain choice={choice} most={most} />
                  </td>
                  <td className="figure" data-label={texts.better}>
                    {betterSaid(choice, order.choices[k + 1])}
                  </td>
                  <td className="figure" data-label={texts.stillFree}>
                    {chances.has(choice.team) ? percent(chances.get(choice.team) as number) : '–'}
                  </td>
                  <td data-label={texts.answers}>
                    {listed(choice.answers.map((at) => partName(game, order.needs[at]!)))}
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      )}
      <p className="soft small">{texts.orderHow(Math.max(0, ...order.choices.map(({ simulated }) => simulated)))}</p>
    </section>
  )
}

/** The gain with its interval, about zero in the middle; all of a table have one scale. */
function Gain({ choice, most }: { choice: Choice; most: number }) {
  const { gain, win, error } = choice
  const texts = words().picks
  const x = (value: number) => 50 + (50 * value) / most
  return (
    <div className="picks-gain">
      <svg viewBox="0 0 100 12" preserveAspectRatio="none" aria-hidden="true" className="interval">
        <line x1="50" x2="50" y1="0" y2="12" className="picks-zero" vectorEffect="non-scaling-stroke" />
        <rect x={x(gain.low)} width={Math.max(0.8, x(gain.high) - x(gain.low))} y="3" height="6" />
        <line
          className="interval-mean"
          x1={x(gain.mean)}
          x2={x(gain.mean)}
          y1="0.5"
          y2="11.5"
          vectorEffect="non-scaling-stroke"
        />
      </svg>
      <span className="small">
        {texts.gainTold(gainSaid(gain.mean), gainSaid(gain.low), gainSaid(gain.high))}{' '}
        <span className="soft">{texts.winTold(percent(win.mean), points(100 * error))}</span>
      </span>
    </div>
  )
}
