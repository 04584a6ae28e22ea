import type { Game } from '../../../../src/model/documents/types.ts'

const withoutKey = <T>(map: { [key: string]: T }, key: string): { [key: string]: T } =>
  Object.fromEntries(Object.entries(map).filter(([other]) => other !== key))

const withoutId = (ids: string[], id: string): string[] =>
  ids.includes(id) ? ids.filter((other) => other !== id) : ids

/** A game, and the names of what was changed so that nothing names what is gone. */
export interface Removed {
  game: Game
  others: string[]
}

/** Without a kind of piece: goals stop taking it. A source of it keeps naming it, which its form says. */
export function withoutPiece(game: Game, id: string): Removed {
  const others = game.goals.filter(({ accepts }) => accepts.includes(id)).map(({ name }) => name)
  const pieces = game.pieces.filter((piece) => piece.id !== id)
  const goals = game.goals.map((goal) => ({ ...goal, accepts: withoutId(goal.accepts, id) }))
  return { game: { ...game, pieces, goals }, others }
}

/** Without a goal: sets, bonuses and tie-breakers stop naming it. */
export function withoutGoal(game: Game, id: string): Removed {
  const sets = game.sets.filter(({ needs }) => id in needs)
  const counted = game.bonuses.filter(({ metric }) => metric.kind === 'pieces' && metric.goals.includes(id))
  const next: Game = {
    ...game,
    goals: game.goals.filter((goal) => goal.id !== id),
    sets: game.sets.map((set) => (id in set.needs ? { ...set, needs: withoutKey(set.needs, id) } : set)),
    bonuses: game.bonuses.map((bonus) =>
      bonus.metric.kind === 'pieces' && bonus.metric.goals.includes(id)
        ? { ...bonus, metric: { ...bonus.metric, goals: withoutId(bonus.metric.goals, id) } }
        : bonus,
    ),
    ranking: {
      ...game.ranking,
      // biome-ignore lint/suspicious/noThenProperty: the model's own name for the order of tie-breakers
      then: game.ranking.then.map((breaker) =>
        typeof breaker === 'object' ? { pieces: withoutId(breaker.pieces, id) } : breaker,
      ),
    },
  }
  return { game: next, others: [...sets, ...counted].map(({ name }) => name) }
}

/** Without a finish: bonuses stop naming it. */
export function withoutFinish(game: Game, id: string): Removed {
  const others = game.bonuses.filter(({ metric }) => metric.kind === 'finished' && metric.finishes.includes(id))
  const bonuses = game.bonuses.map((bonus) =>
    bonus.metric.kind === 'finished'
      ? { ...bonus, metric: { ...bonus.metric, finishes: withoutId(bonus.metric.finishes, id) } }
      : bonus,
  )
  const finishes = game.finishes.filter((finish) => finish.id !== id)
  return { game: { ...game, finishes, bonuses }, others: others.map(({ name }) => name) }
}
