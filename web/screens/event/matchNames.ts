import type { Match, Row } from '../../../src/model/scouting/types.ts'
import type { StandsPack } from '../../codes/standsPack.ts'
import { words } from '../../words/catalogue.ts'

/** 'Qualification 12', and which play of it where it is a replay. */
export function matchName({ phase, number, play }: Pick<Match, 'phase' | 'number' | 'play'>): string {
  const texts = words().handin.match
  const name = texts[phase](number)
  return play > 1 ? texts.play(name, play) : name
}

export function nameOfMatch(pack: Pick<StandsPack, 'matches'>, id: string | null): string {
  if (id === null) return words().handin.match.none
  const match = pack.matches.find((each) => each.id === id)
  return match ? matchName(match) : id
}

/** Whose ids stand in records; null: a lead has removed that name. */
export type People = readonly { id: string; nickname: string | null }[]

export function nameOfPerson({ people, named = [] }: { people: People; named?: People }, id: string): string {
  const found = [...people, ...named].find((person) => person.id === id)
  if (found) return found.nickname ?? words().people.named.somebody
  // What this program made up as an id says nothing to anybody; what somebody else's did may be a name.
  return /^[\da-f]{8}-[\da-f-]{27}$/i.test(id) ? words().people.named.unknown(id.slice(-4)) : id
}

/** What a row is about, in a few words. */
export function rowName(pack: StandsPack, row: Row): string {
  const texts = words().handin.rows
  switch (row.kind) {
    case 'observation':
      return texts.observation(nameOfMatch(pack, row.body.match), row.body.team)
    case 'visit':
      return texts.visit(row.body.team)
    case 'ranking':
      return texts.ranking(nameOfMatch(pack, row.body.match))
    case 'change':
      return texts.change(row.body.team)
    case 'photo':
      return texts.photo
    case 'drill':
      return texts.drill
    case 'withdrawal':
      return texts.withdrawal
  }
}
