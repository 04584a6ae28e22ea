import { list, measured, needed, nullable, number, text, whole, yes } from './fields.ts'
import type { Field, Table } from './types.ts'

const seconds = measured('s')
const metres = measured('m')
const pieces = measured('pieces')

/** What every record has: its way from a phone to the server. */
const way: readonly Field[] = [
  text('id', 'row.id', 'Id of the record (UUID)', needed),
  whole('arrival', 'arrival', 'The order in which records arrived at the server'),
  text('device', 'row.device', 'Id of the device that it was recorded on', needed),
  whole('sequence', 'row.sequence', 'Counts the records of a device', needed),
  text('scout', 'row.scout', 'Id of the person who recorded it', needed),
  text('made', 'row.made', 'When, by the phone’s clock, ISO 8601', needed),
  text('received_at', 'receivedAt', 'When it came to the server, ISO 8601'),
  text('handed_in_by', 'person', 'Id of the person who handed it in'),
  text('takes_place_of', 'replaces', 'Id of the record that it takes the place of'),
  text('seat_alliance', 'row.seat.alliance', 'Where the scout’s robot stood: red or blue'),
  whole('seat_position', 'row.seat.position', 'Where it stood: position 1 to 3'),
  text('reason', 'row.reason', 'Why it corrects another'),
]

/** What scouts recorded: a table for each kind of record, and one for each list within them. */
export const recordTables = {
  observation: {
    name: 'observations',
    title: 'Observations',
    about: 'What scouts saw of one robot, or of one human player, in one match: a line each',
    key: ['id'],
    fields: [
      ...way,
      text('match', 'row.body.match', 'Id of the match; empty for a run outside of one', nullable),
      text('team', 'row.body.team', 'Team, as it was recorded', needed),
      text('subject', 'row.body.subject', 'robot or human', needed),
      text('origin', 'row.body.origin', 'live, video or practice', needed),
      text('replaces', 'row.body.replaces', 'Id of the observation that this one corrects'),
      whole('game', 'row.body.game', 'Revision of the game that it was made with', needed),
      text('identified_by', 'row.body.identifiedBy', 'number or position', needed),
      yes('absent', 'row.body.absent', 'The robot did not come'),
      text('start_spot', 'row.body.startSpot', 'Id of the start'),
      yes('left_start', 'row.body.leftStart', 'Whether it left its start'),
      text('routine', 'row.body.routine', 'Id of the autonomous routine'),
      text('driver', 'row.body.driver', 'Who drove, in practice'),
      whole('robot_revision', 'row.body.robotRevision', 'Revision of the design'),
      number('departed_at', 'row.body.departedAt', 'When it departed for its finish', seconds),
      whole('happenings', 'happenings', 'Its lines in happenings; empty: no timeline was kept'),
      whole('counts', 'counts', 'Its lines in counts; empty: nothing was only counted'),
      yes('finish_seen', 'row.body.finish', 'Whether something was recorded of the finish', { presence: true }),
      text('finish_attempted', 'row.body.finish.attempted', 'Id of the finish that it tried', nullable),
      text('finish_achieved', 'row.body.finish.achieved', 'Id of the finish that it reached', nullable),
      number('defence_played_seconds', 'row.body.defence.playedSeconds', 'How long it defended', seconds),
      text('defence_received', 'row.body.defence.received', 'How much it was defended: none, some or heavy'),
      number('lost_seconds', 'row.body.lostSeconds', 'How long it stood still', seconds),
      number('stopped_at', 'row.body.stoppedAt', 'When it stopped for good', seconds),
      whole('fouls_minor', 'row.body.fouls.minor', 'Minor fouls'),
      whole('fouls_major', 'row.body.fouls.major', 'Major fouls'),
      text('note', 'row.body.note', 'Note'),
    ],
  },
  visit: {
    name: 'visits',
    title: 'Pit visits',
    about: 'What teams say of themselves: a line for each visit',
    key: ['id'],
    fields: [
      ...way,
      text('team', 'row.body.team', 'Team', needed),
      text('at', 'row.body.at', 'When, ISO 8601', needed),
      whole('goals', 'goals', 'Its lines in visit_goals; empty: no pieces were claimed'),
      number('cycle', 'row.body.claims.cycle', 'Claimed time of a trip', seconds),
      text('finish', 'row.body.claims.finish', 'Id of the claimed finish'),
      list('routines', 'row.body.claims.routines', 'Ids of claimed autonomous routines'),
      text('size', 'row.body.claims.size', 'Size in the team’s own words'),
      number('mass', 'row.body.claims.mass', 'Claimed mass', measured('kg')),
      list('photos', 'row.body.photos', 'Ids of photos', needed),
      text('note', 'row.body.note', 'Note'),
    ],
  },
  ranking: {
    name: 'rankings',
    title: 'Rankings',
    about: 'How experts order robots of one match: a line for each ranking',
    key: ['id'],
    fields: [
      ...way,
      text('match', 'row.body.match', 'Id of the match', needed),
      text('by', 'row.body.by', 'driving or defence', needed),
      list('order', 'row.body.order', 'Teams, best first', needed),
    ],
  },
  change: {
    name: 'changes',
    title: 'Changes',
    about: 'Robots that were changed, so that what was seen before says less',
    key: ['id'],
    fields: [
      ...way,
      text('team', 'row.body.team', 'Team', needed),
      text('after_match', 'row.body.afterMatch', 'Id of the match; empty: before its first', nullable),
      text('note', 'row.body.note', 'Note'),
    ],
  },
  photo: {
    name: 'photos',
    title: 'Photos',
    about: 'Photos of pit visits; the table is missing where they were left out',
    key: ['id'],
    fields: [
      ...way,
      text('type', 'row.body.type', 'Media type', needed),
      text('data', 'row.body.data', 'The picture in Base64', needed),
    ],
  },
  drill: {
    name: 'drills',
    title: 'Rehearsals',
    about: 'Records of a rehearsal: that a phone’s way to the server works',
    key: ['id'],
    fields: [...way, text('drill', 'row.body.drill', 'Id of the rehearsal', needed)],
  },
  withdrawal: {
    name: 'withdrawals',
    title: 'Withdrawals',
    about: 'Records that a lead took out again: they stay, and count for nothing',
    key: ['id'],
    fields: [...way, text('record', 'row.body.record', 'Id of the record that was taken out', needed)],
  },
} as const satisfies { readonly [kind: string]: Table }

/** Lists within records: a line for each item, in the order of `order`. */
export const listTables = {
  happenings: {
    name: 'happenings',
    title: 'Happenings',
    about: 'What robots did, tap by tap',
    key: ['observation', 'order'],
    foreign: { fields: ['observation'], table: 'observations', key: ['id'] },
    fields: [
      text('observation', 'of', 'Id of the observation', needed),
      whole('order', 'order', 'Place in its timeline, from 1', needed),
      number('elapsed', 'item.elapsed', 'Since the match’s start', { ...seconds, ...needed }),
      text('what', 'item.what', 'What the robot did', needed),
      text('goal', 'item.goal', 'Id of the goal'),
      text('source', 'item.source', 'Id of the source'),
      whole('n', 'item.n', 'How many pieces; 1 where nothing is said', pieces),
      text('counted', 'item.counted', 'each or estimate'),
      number('x', 'item.x', 'Where, along the field’s length', metres),
      number('y', 'item.y', 'Where, along its width', metres),
    ],
  },
  counts: {
    name: 'counts',
    title: 'Counts',
    about: 'Pieces by goal and period, where they were only counted',
    key: ['observation', 'order'],
    foreign: { fields: ['observation'], table: 'observations', key: ['id'] },
    fields: [
      text('observation', 'of', 'Id of the observation', needed),
      whole('order', 'order', 'Place in its list, from 1', needed),
      text('goal', 'item.goal', 'Id of the goal', needed),
      text('period', 'item.period', 'auto or teleop', needed),
      whole('scored', 'item.scored', 'Scored', { ...pieces, ...needed }),
      whole('missed', 'item.missed', 'Missed', { ...pieces, ...needed }),
    ],
  },
  visitGoals: {
    name: 'visit_goals',
    title: 'Claims by goal',
    about: 'Pieces a match that teams claim: a line for each goal',
    key: ['visit', 'goal'],
    foreign: { fields: ['visit'], table: 'visits', key: ['id'] },
    fields: [
      text('visit', 'of', 'Id of the visit', needed),
      text('goal', 'goal', 'Id of the goal', needed),
      number('pieces', 'pieces', 'How many', { ...measured('pieces a match'), ...needed }),
    ],
  },
} as const satisfies { readonly [name: string]: Table }
