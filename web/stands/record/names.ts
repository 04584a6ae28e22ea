import type { Game } from '../../../src/model/documents/types.ts'
import type { Match, Seat } from '../../../src/model/scouting/types.ts'
import { words } from '../words/catalogue.ts'
import type { About, Tap } from './draft.ts'

/** 'Qualification 12', and which play of it where it was played again. */
export function matchName({ phase, number, play }: Pick<Match, 'phase' | 'number' | 'play'>): string {
  const texts = words().match
  const name = texts[phase](number)
  return play > 1 ? texts.replay(name, play) : name
}

/** 'Red, position 2'. */
export function seatName({ alliance, position }: Seat): string {
  const texts = words().match
  return texts.seat(texts[alliance], position)
}

/** 'Red, position 2, Team 90012', or what is known of it. */
export function robotName({ seat, team, subject }: Pick<About, 'seat' | 'team' | 'subject'>): string {
  const texts = words().match
  const name = [seat && seatName(seat), team && texts.team(team)].filter(Boolean).join(', ')
  return subject === 'human' ? texts.human(name) : name
}

/** 'Qualification 12: Red, position 2, Team 90012'. */
export function aboutName(about: About, matches: readonly Match[]): string {
  const texts = words().match
  const match = matches.find(({ id }) => id === about.match)
  const of = match ? matchName(match) : about.origin === 'practice' ? texts.run : texts.free
  return texts.about(of, robotName(about))
}

const nameIn = (of: readonly { id: string; name: string }[], id: string | undefined) =>
  of.find((each) => each.id === id)?.name ?? id ?? ''

type TapLike = Pick<Tap, 'what' | 'n' | 'counted'> & { goal?: string | undefined; source?: string | undefined }

/** What a tap says, as on its button. */
export function tapName(game: Game, tap: TapLike): string {
  const texts = words().running
  const { what, goal, source, n, counted } = tap
  switch (what) {
    case 'collected':
      return texts.collected(nameIn(game.sources, source))
    case 'scored': {
      const name = texts.scored(nameIn(game.goals, goal))
      return counted === 'estimate' && n !== undefined ? `${name}, ${texts.about(n)}` : name
    }
    case 'missed':
      return texts.missed(nameIn(game.goals, goal))
    case 'left':
      return texts.left_
    default:
      return texts[what]
  }
}
