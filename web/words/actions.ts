import type { Game, Load } from '../../src/model/documents/types.ts'
import type { Action, PlanNode } from '../../src/model/plan/types.ts'
import { words } from './catalogue.ts'

const named = (places: readonly { id: string; name: string }[], id: string): string =>
  places.find((place) => place.id === id)?.name ?? id

/** The name of a piece, source, goal, finish or start. */
export const placeName = (game: Game, id: string): string =>
  named([...game.sources, ...game.goals, ...game.finishes, ...game.starts, ...game.pieces], id)

/** 'Gantry, spot 2', or the place's name alone where it has one spot. */
export function spotName(game: Game, id: string): string {
  for (const place of [...game.sources, ...game.goals, ...game.finishes]) {
    const index = place.spots.findIndex((spot) => spot.id === id)
    if (index >= 0) return place.spots.length > 1 ? words().actions.spot(place.name, index + 1) : place.name
  }
  const start = game.starts.find((candidate) => candidate.id === id)
  return start ? words().actions.start(start.name) : id
}

/** Every start and spot by its name: where a drive may begin or end. */
export const endChoices = (game: Game): { value: string; label: string }[] =>
  [...game.starts, ...[...game.sources, ...game.goals, ...game.finishes].flatMap(({ spots }) => spots)].map(
    ({ id }) => ({ value: id, label: spotName(game, id) }),
  )

/** 'empty', 'holding 1 Buoy'. */
export const loadWords = (game: Game, load: Load | null): string =>
  load ? words().actions.holding(load.count, named(game.pieces, load.piece)) : words().actions.empty

/** 'At the Gantry, empty'. */
export const nodeWords = (game: Game, node: PlanNode): string =>
  `${spotName(game, node.at)}, ${loadWords(game, node.load)}`

/** What a robot does next, in words: 'collect 2 from Slipway', 'score at Gantry', 'go to Davit', 'nothing more'. */
export function actionWords(game: Game, action: Action): string {
  const texts = words().actions
  if (action.kind === 'collect') return texts.collect(action.load, spotName(game, action.spot))
  if (action.kind === 'score') return texts.score(spotName(game, action.spot))
  if (action.kind === 'finish') return texts.finish(spotName(game, action.spot))
  return texts.stop
}

/** The place that an action leads to, or null where the robot stops. */
export const actionPlace = (action: Action): string | null =>
  action.kind === 'collect'
    ? action.source
    : action.kind === 'score'
      ? action.goal
      : action.kind === 'finish'
        ? action.finish
        : null
