import type { Game } from '../documents/types.ts'

const first = <Place extends { spots: { id: string }[] }>(place: Place): Place => ({
  ...place,
  spots: place.spots.slice(0, 1),
})

/** The game with one spot per place: the same to a robot whose legs take as long wherever they begin, and sooner planned. */
export function onePerPlace(game: Game): Game {
  return {
    ...game,
    sources: game.sources.map(first),
    goals: game.goals.map(first),
    finishes: game.finishes.map(first),
  }
}
