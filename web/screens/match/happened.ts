import type { Game } from '../../../src/model/documents/types.ts'
import type { MatchEvent } from '../../../src/model/match/types.ts'
import { placeName } from '../../words/actions.ts'
import { words } from '../../words/catalogue.ts'
import type { Doing } from './replay.ts'

/** 'drives to Gantry'. */
export function doingWords(game: Game, doing: Doing, place: string | null): string {
  const text = words().match.replay.doing
  if (doing === 'finishes' && place === null) return text.finishesNot
  const said = text[doing]
  return typeof said === 'string' ? said : said(place === null ? '' : placeName(game, place))
}

export function eventWords(game: Game, event: MatchEvent): string {
  const text = words().match.replay
  if (event.kind === 'leaves') return text.leaves
  if (event.kind === 'fouls') return text.fouls(event.minor, event.major)
  return doingWords(game, event.kind, 'place' in event ? event.place : null)
}

/** In which part of the match an elapsed time lies. */
export function periodAt({ clock }: Game, time: number): 'auto' | 'pause' | 'teleop' | 'endgame' | 'over' {
  const teleop = clock.auto + clock.pause
  const end = teleop + clock.teleop
  if (time >= end) return 'over'
  if (time < clock.auto) return 'auto'
  if (time < teleop) return 'pause'
  return time < end - clock.endgame ? 'teleop' : 'endgame'
}
