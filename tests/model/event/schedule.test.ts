import { describe, expect, test } from 'vitest'
import { breakwater } from '../../../seed/index.ts'
import {
  checkSchedule,
  edited,
  findHeadings,
  matchColumns,
  momentOf,
  nextMatchOf,
  placeMatches,
  playoffAlliances,
  readResults,
  readSchedule,
  resultColumnsOf,
  scheduleColumns,
  whatChanges,
} from '../../../src/model/event/index.ts'
import { eventOf, match, side } from './matches.ts'

const codes = (...of: Parameters<typeof checkSchedule>) =>
  checkSchedule(...of).map(({ match, weight, said }) => `${match} ${weight} ${said.code}`)

describe('the checks of a schedule', () => {
  const event = eventOf('A B C D E F G H', { playoff: { format: 'double', alliances: 2, size: 4 } })
  const good = match(1, 'A B C', 'D E F')

  test('find nothing in a good one, a replay and a surrogate among it', () => {
    const replay = match(1, 'A B C', 'D E F', { id: 'again', play: 2, voids: 'q1' })
    expect(checkSchedule(event, [good, replay, match(2, 'A* G H', 'D E F')])).toEqual([])
  })

  test.each([
    ['a team twice', [match(1, 'A B C', 'D A F')], ['q1 wrong teamTwice']],
    ['a team that is not there', [match(1, 'A B Z', 'D E F')], ['q1 wrong unknownTeam']],
    ['a number twice', [good, match(1, 'A B C', 'D E F', { id: 'other' })], ['other wrong matchTwice']],
    ['an id twice', [good, match(2, 'A B C', 'D E F', { id: 'q1' })], ['q1 wrong matchIdTwice']],
    ['a void of nothing', [match(1, 'A B C', 'D E F', { play: 2, voids: 'none' })], ['q1 wrong voidsNothing']],
    ['a void of another match', [good, match(2, 'A B C', 'D E F', { play: 2, voids: 'q1' })], ['q2 wrong voidsOther']],
    [
      'a void of a later play',
      [match(1, 'A B C', 'D E F', { play: 2, id: 'late' }), match(1, 'A B C', 'D E F', { voids: 'late' })],
      ['late odd playWithoutVoid', 'q1 wrong voidsOther'],
    ],
    [
      'two that void the same',
      [good, ...[2, 3].map((play) => match(1, 'A B C', 'D E F', { id: `q1-${play}`, play, voids: 'q1' }))],
      ['q1-3 wrong voidedTwice'],
    ],
    [
      'a position twice',
      [match(1, 'A B C', 'D E F', { red: side('A B C').map((slot) => ({ ...slot, position: 2 as const })) as never })],
      // Who stands where can not be told then, and some are found twice.
      expect.arrayContaining(['q1 wrong positionTwice']),
    ],
    [
      'two matches of a team at one time',
      [
        match(1, 'A B C', 'D E F', { time: '2031-02-28T10:00Z' }),
        match(2, 'F G H', 'B C D', { time: '2031-02-28T10:00Z' }),
      ],
      ['q2 odd sameTime'],
    ],
  ])('tell %s', (_, matches, found) => {
    expect(codes(event, matches)).toEqual(found)
  })

  test('follow alliances of four robots through the playoffs, and tell a fifth', () => {
    const final = (number: number, red: string, blue: string) =>
      match(number, red, blue, { phase: 'playoff', id: `p${number}` })
    const four = [final(1, 'A B C', 'E F G'), final(2, 'A B D', 'E F H'), final(3, 'D C B', 'H G F')]
    expect(playoffAlliances(four)).toEqual([
      ['A', 'B', 'C', 'D'],
      ['E', 'F', 'G', 'H'],
    ])
    expect(checkSchedule(event, four)).toEqual([])
    const joined = [...four, final(4, 'A B C', 'H E I')]
    const more = eventOf('A B C D E F G H I', { playoff: event.playoff! })
    expect(codes(more, joined)).toEqual(['null odd allianceTooLarge'])
  })
})

describe('a table of matches', () => {
  const headings = ['Match', 'Start', 'Red 1', 'Red 2', 'Red 3', 'Blue 1', 'Blue 2', 'Blue 3', 'Surrogates', 'colour']
  const columns = matchColumns(headings, scheduleColumns)
  const defaults = { phase: 'qualification' as const, day: '2031-02-28', offset: '+01:00' }

  test('has its columns found by what their headings say, in German too', () => {
    expect(columns).toEqual({
      number: 0,
      time: 1,
      red_1: 2,
      red_2: 3,
      red_3: 4,
      blue_1: 5,
      blue_2: 6,
      blue_3: 7,
      surrogates: 8,
    })
    expect(matchColumns(['Nr', 'Uhrzeit', 'Rot 1', 'Blau_3', 'blau 3'], scheduleColumns)).toEqual({
      number: 0,
      time: 1,
      red_1: 2,
      blue_3: 3,
    })
  })

  test('is read line by line, and each fault is told where it is', () => {
    const lines = readSchedule(
      [
        ['1', '9:05', '90001', '90002', '90003', '90004', '90005', '90006', '90005', ''],
        ['', '', '', '', '', '', '', '', '', ''],
        ['Q2', '25:00', '90001', '', '90003', 'the blue', '90005', '90006', '90009', ''],
      ],
      columns,
      defaults,
    )
    expect(lines).toEqual([
      {
        line: 2,
        read: {
          phase: 'qualification',
          number: 1,
          play: 1,
          time: '2031-02-28T09:05:00+01:00',
          red: ['90001', '90002', '90003'].map((team) => ({ team, counts: true, state: 'expected' })),
          blue: ['90004', '90005', '90006'].map((team) => ({ team, counts: team !== '90005', state: 'expected' })),
        },
      },
      {
        line: 4,
        faults: [
          { column: 'time', fault: 'noTime', got: '25:00' },
          { column: 'red_2', fault: 'missing' },
          { column: 'blue_1', fault: 'noTeam', got: 'THE BLUE' },
          { column: 'surrogates', fault: 'notPlaying', got: '90009' },
        ],
      },
    ])
  })

  test('begins where its headings are, below a title or empty lines, and its separator is the one that makes sense of them', () => {
    const known = [...scheduleColumns]
    expect(findHeadings('number,red_1;x\n', known)).toEqual({ line: 0, delimiter: ',' })
    expect(findHeadings('\n\nSpiel;Rot 1;Rot 2\n1;90001;90002', known)).toEqual({ line: 2, delimiter: ';' })
    expect(findHeadings('Our plan, as of noon\r\nMatch\tTime\tRed 1', known)).toEqual({ line: 1, delimiter: '\t' })
    expect(findHeadings('1\t90001\t90002', known)).toEqual({ line: null, delimiter: '\t' })
    // Semicolons between the names in one cell separate no cells.
    const results = resultColumnsOf(breakwater.game)
    const table = 'number,red_total,blue_total,red_bonuses\n1,20,30,Harbour moored; berthed'
    expect(findHeadings(table, results)).toEqual({ line: 0, delimiter: ',' })
    expect(matchColumns(['Nr', 'Rot gesamt', 'Blau autonom', 'Rot aus Fouls'], results)).toEqual({
      number: 0,
      red_total: 1,
      blue_autonomous: 2,
      red_from_fouls: 3,
    })
  })

  test.each([
    ['9:05', '2031-02-28T09:05:00+01:00'],
    ['9.05 Uhr', '2031-02-28T09:05:00+01:00'],
    ['1:30 PM', '2031-02-28T13:30:00+01:00'],
    ['12:30 am', '2031-02-28T00:30:00+01:00'],
    ['1.3.2031 14:05', '2031-03-01T14:05:00+01:00'],
    ['2031-03-01 14:05:30', '2031-03-01T14:05:30+01:00'],
    ['2031-03-01T13:05Z', '2031-03-01T13:05:00Z'],
    ['13:05 pm', null],
    ['24:00', null],
    ['2031-02-30 09:00', null],
    ['3/1/2031 9:00', null],
    ['0.38', null],
  ])('has %j for the time %j', (text, moment) => {
    expect(momentOf(text, defaults)).toBe(moment)
  })

  test('that tells a match twice is taken once where both lines are alike, and not at all where they differ', () => {
    const line = (number: string, first: string) => [number, '', first, '2', '3', '4', '5', '6', '', '']
    const lines = readSchedule([line('1', '1'), line('1', '1'), line('2', '1'), line('2', '7')], columns, defaults)
    expect(lines.map((each) => ('read' in each ? each.read.number : each))).toEqual([
      1,
      { line: 3, faults: [{ column: 'number', fault: 'again', got: '2' }] },
      { line: 4, faults: [{ column: 'number', fault: 'differently', got: '5' }] },
      { line: 5, faults: [{ column: 'number', fault: 'differently', got: '4' }] },
    ])
    const columnsOf = { number: 0, red_total: 1, blue_total: 2 }
    const results = readResults(
      [
        ['7', '1', '2'],
        ['7', '1', '2'],
      ],
      columnsOf,
      { game: breakwater.game, phase: 'qualification' },
    )
    expect(results.map((each) => 'read' in each)).toEqual([true, false])
  })

  test('meets the matches that are there, keeps what it says nothing of, and lets a replay void the play before', () => {
    const there = match(1, 'A- B C', 'D E F', { id: 'kept', time: '2031-02-28T10:00Z' })
    const told = [1, 2].map((play) => {
      const { id: _, ...rest } = match(1, 'A B C', 'D E G', { play })
      return { ...rest, red: side('A B C').map((slot) => ({ ...slot, state: 'expected' as const })) as never }
    })
    const placed = placeMatches(told, [there], { number: 0 })
    expect(placed.map(({ id, voids, time }) => [id, voids, time])).toEqual([
      ['kept', undefined, '2031-02-28T10:00Z'],
      ['qualification-1-2', 'kept', undefined],
    ])
    expect(placed[0]?.red[0].state).toBe('absent')
  })

  test('of results is read with categories, pieces and bonuses by name', () => {
    const { game } = breakwater
    const heads = [
      'number',
      'red_total',
      'red_autonomous',
      'red_bonuses',
      'red_pieces_piers',
      'blue_total',
      'blue_bonuses',
    ]
    const found = matchColumns(heads, resultColumnsOf(game))
    const [good, bad] = readResults(
      [
        ['7', '81', '12,5', 'Harbour moored; berthed', '9', '64', ''],
        ['7', 'many', '', 'Moon', '-1', '', ''],
      ],
      found,
      { game, phase: 'qualification' },
    )
    expect(good).toEqual({
      line: 2,
      read: {
        phase: 'qualification',
        number: 7,
        play: 1,
        red: { points: { total: 81, autonomous: 12.5 }, bonuses: ['moored', 'berthed'], pieces: { piers: 9 } },
        blue: { points: { total: 64 }, bonuses: [] },
      },
    })
    expect(bad).toMatchObject({
      faults: [
        { column: 'red_pieces_piers', fault: 'noNumber', got: '-1' },
        { column: 'red_total', fault: 'noNumber', got: 'many' },
        { column: 'red_bonuses', fault: 'unknownBonus', got: 'Moon' },
        { column: 'blue_total', fault: 'missing' },
      ].map((fault) => expect.objectContaining(fault)),
    })
  })
})

test('an edit tells what it adds, changes and removes, and what becomes of records and results', () => {
  const before = [match(1, 'A B C', 'D E F'), match(2, 'G H A', 'B C D'), match(3, 'E F G', 'H A B')]
  const red2 = { alliance: 'red', position: 2 } as const
  const records = [
    { match: 'q1', seat: red2, team: 'B', identifiedBy: 'position' as const, count: 2 },
    { match: 'q1', seat: red2, team: 'B', identifiedBy: 'number' as const, count: 1 },
    {
      match: 'q1',
      seat: { alliance: 'blue', position: 1 } as const,
      team: 'D',
      identifiedBy: 'position' as const,
      count: 4,
    },
    { match: 'q3', seat: null, team: 'E', identifiedBy: 'number' as const, count: 3 },
  ]
  const edit = {
    put: [match(1, 'A G C', 'D E F-', { time: '2031-02-28T10:00Z' }), before[1]!, match(4, 'A B C', 'D E F')],
    remove: ['q3'],
  }
  const { changes, same } = whatChanges(before, edit, { records, results: new Set(['q1']) })
  expect(same).toBe(1)
  expect(changes).toMatchObject([
    {
      kind: 'changed',
      match: { id: 'q1' },
      moved: true,
      result: true,
      teams: [{ seat: red2, from: 'B', to: 'G', follow: 2, stay: 1 }],
      slots: [{ seat: { alliance: 'blue', position: 3 }, team: 'F', to: { state: 'absent' } }],
    },
    { kind: 'removed', match: { id: 'q3' }, records: 3, result: false },
    { kind: 'added', match: { id: 'q4' } },
  ])
  expect(edited(before, edit).map(({ id }) => id)).toEqual(['q1', 'q2', 'q4'])
})

test('the next match of a person is the first that is not over, in the order of play', () => {
  const matches = [match(3, 'A B C', 'D E F'), match(2, 'A B C', 'D E F'), match(1, 'A B C', 'D E F')]
  const seat = { alliance: 'blue', position: 3 } as const
  const assignments = ['q3', 'q2', 'q1'].map((id) => ({ match: id, seat, person: id === 'q2' ? 'ben' : 'ada' }))
  const next = (person: string, over: string[]) =>
    nextMatchOf(person, { matches, assignments, over: (id) => over.includes(id) })?.match.id
  expect(next('ada', [])).toBe('q1')
  expect(next('ada', ['q1'])).toBe('q3')
  expect(next('ben', ['q1'])).toBe('q2')
  expect(next('ben', ['q2'])).toBeUndefined()
})
