import type { LineupRequest } from '../../../../src/model/match/lineup/types.ts'
import type { Slots } from '../setup.ts'

/** Whom a robot may mark: nobody, or the opponent in a position. */
export const marks = ['nobody', '0', '1', '2'] as const
export type Mark = (typeof marks)[number]

/** What one of our robots may do in the line-up that is looked for. */
export interface Choice {
  /** The way to play that it is about; of another one it says nothing. */
  of: string
  /** It does what its way to play says. */
  settled: boolean
  goals: readonly string[]
  finishes: readonly string[]
  marks: readonly Mark[]
  /** Time left (s) between which it marks, as typed. */
  from: string
  until: string
}

/** One way in which the rivals may come, and how likely it is against the others, as it was typed. */
export interface Setting {
  slots: Slots
  weight: string
}

/** What is looked for: kept with the set-up, so that a link shows the same. */
export interface LineupSetup {
  objective: LineupRequest['objective']
  choices: readonly (Choice | null)[]
  /** Weight of the rivals as the set-up has them, and further settings. */
  weight: string
  further: readonly Setting[]
}

export const noLineup: LineupSetup = { objective: 'win', choices: [null, null, null], weight: '1', further: [] }

export const mostSettings = 8

const list = (texts: readonly string[]): string => texts.map(encodeURIComponent).join()
const listed = (text: string | undefined): string[] =>
  text === undefined || text === '' ? [] : text.split(',').map(decodeURIComponent)

const choiceText = ({ of, settled, goals, finishes, marks: may, from, until }: Choice): string =>
  [list([of]), settled ? 'settled' : 'free', list(goals), list(finishes), list(may), list([from]), list([until])].join(
    ';',
  )

function choiceOf(text: string | null): Choice | null {
  if (text === null) return null
  try {
    const [of, part, goals, finishes, may, from, until] = text.split(';')
    const id = listed(of)[0]
    if (id === undefined) return null
    return {
      of: id,
      settled: part === 'settled',
      goals: listed(goals),
      finishes: listed(finishes),
      marks: marks.filter((mark) => listed(may).includes(mark)),
      from: listed(from)[0] ?? '',
      until: listed(until)[0] ?? '',
    }
  } catch {
    // An address that was cut or typed by hand: the robot may do what its way to play says.
    return null
  }
}

const settingText = ({ slots, weight }: Setting): string => list([...slots.map((id) => id ?? ''), weight])

function settingOf(text: string): Setting[] {
  try {
    const [one, two, three, weight] = text.split(',').map(decodeURIComponent)
    return [{ slots: [one || null, two || null, three || null], weight: weight ?? '1' }]
  } catch {
    return []
  }
}

/** The line-up's part of the address; nothing where nothing was chosen. */
export function lineupToSearch(lineup: LineupSetup | null): string[] {
  if (!lineup) return []
  return [
    `best-by=${lineup.objective}`,
    ...lineup.choices.flatMap((choice, position) =>
      choice ? [`may-${position + 1}=${encodeURIComponent(choiceText(choice))}`] : [],
    ),
    ...(lineup.weight === '1' ? [] : [`weight=${encodeURIComponent(lineup.weight)}`]),
    ...lineup.further.map((setting) => `rivals=${encodeURIComponent(settingText(setting))}`),
  ]
}

export function lineupFromSearch(said: URLSearchParams): LineupSetup | null {
  const objective = said.get('best-by')
  if (objective === null) return null
  return {
    objective: objective === 'rankingPoints' ? 'rankingPoints' : 'win',
    choices: [1, 2, 3].map((position) => choiceOf(said.get(`may-${position}`))),
    weight: said.get('weight') ?? '1',
    further: said
      .getAll('rivals')
      .flatMap(settingOf)
      .slice(0, mostSettings - 1),
  }
}
