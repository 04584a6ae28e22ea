import type { Game } from '../../../../src/model/documents/types.ts'
import type { Happening, Observation, Row } from '../../../../src/model/scouting/types.ts'
import type { StandsPack } from '../../../codes/standsPack.ts'
import { words } from '../../../words/catalogue.ts'
import { moment, plain, seconds } from '../../../words/format.ts'
import { nameOfMatch, nameOfPerson } from '../matchNames.ts'
import { seatName } from '../names.ts'
import { claimLines } from '../visits/Claims.tsx'

/** One line of what a record says. Lines with the same `key` say the same thing of two records. */
export interface Fact {
  key: string
  what: string
  says: string
}

export const isTap = ({ key }: Fact): boolean => key.startsWith('tap ')

const nameIn = (list: readonly { id: string; name: string }[], id: string): string =>
  list.find((each) => each.id === id)?.name ?? id

const yesOrNo = (value: boolean): string => (value ? words().records.yes : words().records.no)

/** 'scored, Hook, about 3'. */
export function happeningName(game: Game, { what, goal, source, n = 1, counted }: Happening): string {
  const texts = words().records
  const place = goal !== undefined ? nameIn(game.goals, goal) : source !== undefined ? nameIn(game.sources, source) : ''
  const count = counted === 'estimate' ? texts.about(plain(n)) : n === 1 ? '' : `× ${plain(n)}`
  return [texts.what[what], place, count].filter(Boolean).join(', ')
}

/** Everything that a record says, line by line; the taps of a match come last. */
export function factsOf(pack: StandsPack, row: Row): Fact[] {
  const texts = words().records
  const { fields } = texts
  const way: Fact[] = [
    { key: 'scout', what: fields.scout, says: nameOfPerson(pack, row.scout) },
    { key: 'made', what: fields.made, says: moment(row.made) },
    ...(row.reason ? [{ key: 'reason', what: fields.reason, says: row.reason }] : []),
  ]
  const fact = (key: keyof typeof fields, says: string): Fact => ({ key, what: fields[key], says })
  switch (row.kind) {
    case 'observation':
      return [...observationFacts(pack, row), ...way, ...tapFacts(pack.game.body, row.body)]
    case 'visit':
      return [
        fact('team', row.body.team),
        fact('at', moment(row.body.at)),
        ...claimLines(pack.game.body, row.body).map(({ what, claim }) => ({ key: `claim ${what}`, what, says: claim })),
        fact('photos', plain(row.body.photos.length)),
        ...noteOf(row.body.note),
        ...way,
      ]
    case 'ranking':
      return [
        fact('match', nameOfMatch(pack, row.body.match)),
        fact('by', words().visits.ranked[row.body.by]),
        fact('order', row.body.order.join(' › ')),
        ...way,
      ]
    case 'change': {
      const { team, afterMatch, note } = row.body
      const after = afterMatch === null ? texts.none : nameOfMatch(pack, afterMatch)
      return [fact('team', team), fact('after', after), ...noteOf(note), ...way]
    }
    case 'photo':
      // Four letters of Base64 are three bytes.
      return [fact('size', texts.kilobytes(plain((row.body.data.length * 3) / 4000, 0))), ...way]
    case 'drill':
      return [fact('drill', row.body.drill), ...way]
    case 'withdrawal':
      return [fact('withdrawal', row.body.record), ...way]
  }
}

const noteOf = (note: string | undefined): Fact[] =>
  note === undefined ? [] : [{ key: 'note', what: words().sheets.fields.note, says: note }]

function observationFacts(pack: StandsPack, row: Extract<Row, { kind: 'observation' }>): Fact[] {
  const { body, seat } = row
  const game = pack.game.body
  const texts = words().records
  const sheet = words().sheets.fields
  const facts: Fact[] = []
  const add = (key: string, what: string, says: string | undefined) => {
    if (says !== undefined) facts.push({ key, what, says })
  }
  const { fields } = texts
  add('match', fields.match, nameOfMatch(pack, body.match))
  add('team', fields.team, body.team)
  add('seat', fields.seat, seat && seatName(seat))
  add('known', fields.known, texts.known[body.identifiedBy])
  add('subject', fields.subject, texts.subject[body.subject])
  add('origin', fields.origin, texts.origin[body.origin])
  add('absent', sheet.absent, body.absent ? texts.yes : undefined)
  add('start', fields.start, body.startSpot === undefined ? undefined : nameIn(game.starts, body.startSpot))
  add('left', sheet.left, body.leftStart === undefined ? undefined : yesOrNo(body.leftStart))
  add('routine', fields.routine, body.routine)
  add('driver', fields.driver, body.driver)
  for (const { key, what, count } of totals(game, body)) add(key, what, plain(count))
  for (const which of ['attempted', 'achieved'] as const) {
    const finish = body.finish?.[which]
    if (finish !== undefined)
      add(`finish ${which}`, sheet.finish[which], finish === null ? texts.none : nameIn(game.finishes, finish))
  }
  add('defence', fields.defence, body.defence && seconds(body.defence.playedSeconds))
  add('defended', fields.defended, body.defence && texts.received[body.defence.received])
  add('lost', sheet.lost, body.lostSeconds === undefined ? undefined : seconds(body.lostSeconds))
  add('stopped', fields.stopped, body.stoppedAt === undefined ? undefined : seconds(body.stoppedAt))
  add('departed', fields.departed, body.departedAt === undefined ? undefined : seconds(body.departedAt))
  add('minor', sheet.foul.minor, body.fouls && plain(body.fouls.minor))
  add('major', sheet.foul.major, body.fouls && plain(body.fouls.major))
  add('note', sheet.note, body.note)
  return facts
}

/** Pieces by goal: as they were counted, by period, or summed up over the taps. */
function totals(game: Game, { counts, timeline }: Observation): { key: string; what: string; count: number }[] {
  const texts = words().records.total
  const sheet = words().sheets.fields
  const counted = (counts ?? []).flatMap(({ goal, period, scored, missed }) => {
    const name = nameIn(game.goals, goal)
    const at = sheet.period[period]
    return [
      { key: `${goal} ${period} scored`, what: sheet.count.scored(name, at), count: scored },
      { key: `${goal} ${period} missed`, what: sheet.count.missed(name, at), count: missed },
    ].filter(({ count }) => count > 0)
  })
  const sums = new Map<string, { key: string; what: string; count: number }>()
  for (const { what, goal, n = 1 } of timeline ?? []) {
    if (goal === undefined || (what !== 'scored' && what !== 'missed')) continue
    const key = `${goal} ${what}`
    sums.set(key, { key, what: texts[what](nameIn(game.goals, goal)), count: (sums.get(key)?.count ?? 0) + n })
  }
  return [...counted, ...sums.values()]
}

/** Each tap as a line of its own; the same tap twice are two lines. */
function tapFacts(game: Game, { timeline = [] }: Observation): Fact[] {
  const texts = words().records
  const seen = new Map<string, number>()
  return timeline.map((happening) => {
    const says = texts.tap(seconds(happening.elapsed), happeningName(game, happening))
    const nth = (seen.get(says) ?? 0) + 1
    seen.set(says, nth)
    return { key: `tap ${says} ${nth}`, what: texts.fields.taps, says }
  })
}
