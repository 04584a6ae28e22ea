import { later, list, measured, needed, number, text, whole, yes } from './fields.ts'
import type { Table } from './types.ts'

const points = measured('points')

/** The event, what is played in it, and what the officials counted. */
export const eventTables = {
  event: {
    name: 'event',
    title: 'Event',
    about: 'The event: one line',
    key: ['id'],
    fields: [
      text('id', 'id', 'Id of the event', needed),
      text('name', 'name', 'Name', needed),
      text('game', 'game', 'Id of the game', needed),
      text('level', 'level', 'Level of the event'),
      text('starts_on', 'startsOn', 'First day, ISO 8601'),
      number('half_life', 'halfLife', 'After so many own matches a match counts half in estimates', later),
      text('own', 'own', 'Our own team at the event', later),
      text('playoff_format', 'playoff.format', 'double or bestOf'),
      whole('playoff_games', 'playoff.games', 'Games of a series'),
      whole('playoff_alliances', 'playoff.alliances', 'Alliances'),
      whole('playoff_size', 'playoff.size', 'Robots of an alliance'),
    ],
  },
  teams: {
    name: 'teams',
    title: 'Teams',
    about: 'Teams of the event, in its order',
    key: ['team'],
    fields: [text('team', 'team', 'Team', needed), text('name', 'name', 'Name of the team')],
  },
  people: {
    name: 'people',
    title: 'People',
    about: 'What those are called whose ids stand in other tables',
    key: ['id'],
    fields: [text('id', 'id', 'Id of the person', needed), text('nickname', 'nickname', 'Nickname', needed)],
  },
  matches: {
    name: 'matches',
    title: 'Matches',
    about: 'Matches: a line for each robot, six to a match',
    key: ['match', 'alliance', 'place'],
    fields: [
      text('match', 'match.id', 'Id of the match', needed),
      text('phase', 'match.phase', 'practice, qualification or playoff', needed),
      whole('number', 'match.number', 'Number within the phase', needed),
      whole('play', 'match.play', 'Which play of this match, from 1', needed),
      text('voids', 'match.voids', 'Id of the earlier play whose result no longer counts'),
      text('time', 'match.time', 'When it is expected, ISO 8601'),
      yes('removed', 'removed', 'Whether it was taken out of the schedule', needed),
      text('alliance', 'alliance', 'red or blue', needed),
      whole('place', 'place', 'Place in the list of the alliance, 1 to 3', needed),
      text('team', 'slot.team', 'Team', needed),
      whole('position', 'slot.position', 'Position in the alliance, where it is not the place'),
      yes('counts', 'slot.counts', 'False for a surrogate', needed),
      text('state', 'slot.state', 'expected, played, absent or disqualified', needed),
    ],
  },
  results: {
    name: 'results',
    title: 'Results',
    about: 'What officials counted, in its newest state: two lines to a match',
    key: ['match', 'alliance'],
    fields: [
      text('match', 'match', 'Id of the match', needed),
      text('alliance', 'alliance', 'red or blue', needed),
      number('total', 'side.points.total', 'All points, those from fouls included', { ...points, ...needed }),
      number('autonomous', 'side.points.autonomous', 'Autonomous points', points),
      number('goals', 'side.points.goals', 'Points of goals in teleop', points),
      number('finishes', 'side.points.finishes', 'Points of finishes', points),
      number('from_fouls', 'side.points.fromFouls', 'Points from fouls of the others', points),
      list('bonuses', 'side.bonuses', 'Ids of the bonuses that were reached'),
      whole('piece_goals', 'pieceGoals', 'Its lines in result_pieces; empty: pieces were not told'),
      text('entered_at', 'enteredAt', 'When it was entered, ISO 8601'),
      text('person', 'person', 'Id of the person who entered it'),
    ],
  },
  resultPieces: {
    name: 'result_pieces',
    title: 'Pieces of results',
    about: 'Pieces that officials counted, autonomous included: a line for each goal',
    key: ['match', 'alliance', 'goal'],
    foreign: { fields: ['match', 'alliance'], table: 'results', key: ['match', 'alliance'] },
    fields: [
      text('match', 'match', 'Id of the match', needed),
      text('alliance', 'alliance', 'red or blue', needed),
      text('goal', 'goal', 'Id of the goal', needed),
      whole('pieces', 'pieces', 'How many', { ...measured('pieces'), ...needed }),
    ],
  },
} as const satisfies { readonly [name: string]: Table }
