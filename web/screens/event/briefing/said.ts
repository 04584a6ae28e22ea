import type { Change, CoachCopy, Difference, Fact, Mean } from '../../../../src/model/briefing/index.ts'
import type { Game } from '../../../../src/model/documents/types.ts'
import { words } from '../../../words/catalogue.ts'
import { percent, plain, points, signedPoints } from '../../../words/format.ts'
import { errorOf } from '../../match/said.ts'

/** Time left as a clock shows it: '0:12'. */
export const clock = (seconds: number): string => {
  const whole = Math.round(seconds)
  return `${Math.floor(whole / 60)}:${String(whole % 60).padStart(2, '0')}`
}

/** What places and goals are called. */
export function nameIn(game: Game, id: string): string {
  const all = [...game.sources, ...game.goals, ...game.finishes, ...game.starts]
  return all.find((each) => each.id === id)?.name ?? id
}

/** 'a, b or c'. */
function either(names: readonly string[]): string {
  const texts = words().briefing
  return names.length < 2 ? (names[0] ?? '') : texts.or(names.slice(0, -1).join(', '), names.at(-1)!)
}

export const sourcesSaid = (game: Game, sources: readonly string[]): string =>
  words().briefing.collect(either(sources.map((id) => nameIn(game, id))))

/** The first goal, and what comes after it. */
export function goalsSaid(game: Game, goals: readonly string[]): string {
  const [first, others] = mainGoal(game, goals)
  return others === '' ? first : words().briefing.firstElse(first, others)
}

/** The first goal, and the others as 'a or b'; both empty for none. */
export function mainGoal(game: Game, goals: readonly string[]): [first: string, others: string] {
  const [first = '', ...others] = goals.map((id) => nameIn(game, id))
  return [first, either(others)]
}

/** What a line-up has one of ours do; none of its goals: it stands in somebody's way. */
export const doesSaid = (game: Game, goals: readonly string[], threat: string): string =>
  goals.length === 0 ? words().briefing.standsBefore(threat) : goalsSaid(game, goals)

/** What a line-up loses against another, or that it is better. */
export function losesOf({ win, points: lead }: Difference): string {
  const texts = words().briefing
  const better = win.mean < 0
  const turned = { ...win, mean: Math.abs(win.mean) }
  const by = [winSaid(turned), `${points(better ? -lead.mean : lead.mean)} ± ${errorOf(lead)}`] as const
  return better ? texts.ownBetter(...by) : texts.losesSaid(...by)
}

/** When a robot goes for its finish, in one sentence. */
export function callSaid(
  game: Game,
  { finish, call }: Pick<CoachCopy['jobs'][number], 'finish'> & { call: { at: number | null } | null },
): string {
  const texts = words().briefing
  if (finish === null || call === null || call.at === null) return texts.never
  return texts.go(clock(call.at), nameIn(game, finish))
}

/** '+4 % ± 1 %': a change of a chance. */
export const winSaid = ({ mean, standardError }: Mean): string => {
  const sign = mean > 0 ? '+' : mean < 0 ? '\u2212' : ''
  const error = Math.max(1, Math.ceil(standardError * 100 - 1e-6))
  return `${sign}${Math.round(Math.abs(mean) * 100)} ± ${error}\u00a0%`
}

/** A cost: never below nothing, which only luck makes of nothing. */
export const costSaid = (cost: Mean): string => `${points(Math.max(0, cost.mean))} ± ${errorOf(cost)}`

export const gainsSaid = ({ win, points: lead }: Difference): string =>
  words().briefing.gainsSaid(winSaid(win), `${signedPoints(lead.mean)} ± ${errorOf(lead)}`)

export function changeSaid(game: Game, change: Change): string {
  const texts = words().briefing.changes
  const { noCall } = words().briefing
  switch (change.kind) {
    case 'robots':
      return texts.robots(change.team)
    case 'goals':
      return texts.goals(change.team, goalsSaid(game, change.goals))
    case 'finish':
      return texts.finish(change.team, change.finish === null ? noCall : nameIn(game, change.finish))
    case 'call': {
      const at = (time: number | null) => (time === null ? words().briefing.toTheEnd : clock(time))
      return texts.call(change.team, at(change.from), at(change.to))
    }
    case 'threat':
      return texts.threat(change.team)
    case 'marker':
      return change.team === null ? texts.noMarker : texts.marker(change.team)
    case 'win':
      return texts.win(percent(change.from), percent(change.to))
  }
}

/** Facts that would change the plan, and who of ours may be missing without changing it. */
export function factsSaid(facts: readonly Fact[]): string[] {
  const texts = words().briefing
  const stays = facts.flatMap((fact) => (fact.kind === 'absent' && !fact.changes ? [fact.team] : []))
  const changing = facts.flatMap((fact) => {
    if (fact.kind === 'absent')
      return fact.changes ? [texts.absentChanges(fact.team, winSaid(fact.difference.win))] : []
    const value = fact.what === 'pace' ? plain(fact.value) : percent(fact.value)
    return [texts.numberChanges(texts.number[fact.what][fact.side](fact.team, value), winSaid(fact.difference))]
  })
  return [
    ...changing,
    ...(stays.length > 0 ? [texts.absentStays(either(stays))] : []),
    ...(facts.some(({ kind }) => kind === 'number') ? [] : [texts.noFacts]),
  ]
}
