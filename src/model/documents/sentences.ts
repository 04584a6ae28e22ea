import { compareSentences } from '../compare/sentences.ts'
import { ModelError, type ModelErrorCode, type Path, type Problem } from '../errors.ts'
import { fieldSentences } from '../field/sentences.ts'
import { matchSentences } from '../match/sentences.ts'
import { planSentences } from '../plan/sentences.ts'
import { type Inner, innerText } from '../said.ts'

/** How an id or a name is written in a sentence. */
export function quoted(id: string): string {
  return `“${id.length > 60 ? `${id.slice(0, 57)}…` : id}”`
}

/** What an id can be that of; a spot belongs to a place. */
export type Thing =
  | 'piece'
  | 'source'
  | 'goal'
  | 'finish'
  | 'place'
  | 'start'
  | 'start or spot'
  | 'routine of the robot'
  | 'mechanism of the robot'
  | 'mechanism of the robot that air moves'
  | 'drive among the robot’s mechanisms'
  | 'goal that pays for holding'
  | { spotOf: string }
  | { spotOfGoal: string }

/** What is in a list in which no id may stand twice. */
export type Listed =
  | 'pieces'
  | 'sources'
  | 'goals'
  | 'finishes'
  | 'sets'
  | 'bonuses'
  | 'obstacles'
  | 'starts or spots'
  | 'routines'
  | 'mechanisms'
  | 'ways'
  | 'measured times'

/** What stands at a point of the field. */
export type Standing = { start: string } | { spot: string; of: string }

const thing = (noun: Thing): string =>
  typeof noun === 'string'
    ? noun
    : 'spotOf' in noun
      ? `spot of ${quoted(noun.spotOf)}`
      : `spot of the goal ${quoted(noun.spotOfGoal)}`

const standing = (what: Standing): string =>
  'start' in what ? `start ${quoted(what.start)}` : `spot ${quoted(what.spot)} of ${quoted(what.of)}`

/**
 * Every sentence of the model, in English and SI. A problem keeps its sentence's name and parts beside it, so that a screen
 * can say the same in another language and other units.
 */
export const sentences = {
  ...fieldSentences,
  ...planSentences,
  ...compareSentences,
  ...matchSentences,

  idTwice: (of: { list: Listed; id: string }) => `There are two ${of.list} with the id ${quoted(of.id)}`,
  unknown: (of: { thing: Thing; id: string }) => `There is no ${thing(of.thing)} with the id ${quoted(of.id)}`,
  namedTwice: (of: { thing: Thing; id: string }) => `The ${thing(of.thing)} ${quoted(of.id)} is named twice`,

  noTeleop: (of: { teleop: number }) => `teleop must be longer than 0 s, got ${of.teleop}`,
  longEndgame: (of: { teleop: number; endgame: number }) =>
    `endgame is the last part of teleop (${of.teleop} s), so it can not be longer, got ${of.endgame}`,
  noLevel: (of: { bonus: string }) => `The bonus ${quoted(of.bonus)} has no level with a number to reach`,
  notHeld: (of: { goal: string }) =>
    `The goal ${quoted(of.goal)} pays for each piece; seconds of holding are counted only where holding pays`,
  badOutline: (of: { obstacle: string; fault: Inner }) =>
    `The outline of the obstacle ${quoted(of.obstacle)} is no simple one. ${innerText(of.fault)}`,
  noPartner: (of: { obstacle: string; symmetry: 'mirror' | 'rotate' }) =>
    `The obstacle ${quoted(of.obstacle)} lies on no obstacle when the field is ${of.symmetry === 'mirror' ? 'mirrored' : 'turned by half a turn'}: the alliances would see different fields`,
  outside: (of: { what: Standing; at: readonly number[]; length: number; width: number }) =>
    `The ${standing(of.what)} lies outside the field of ${of.length} m × ${of.width} m, at ${of.at.join(', ')}`,

  tooMany: (of: { what: 'preload' | 'holding' | 'load'; piece: string; most: number; count: number }) =>
    `${of.what} must be at most what the robot carries of ${quoted(of.piece)} (${of.most}), got ${of.count}`,
  stepTooLate: (of: { auto: number; at: number }) => `at must lie within the autonomous of ${of.auto} s, got ${of.at}`,
  notAccepted: (of: { goal: string; piece: string }) =>
    `The goal ${quoted(of.goal)} does not accept ${quoted(of.piece)}`,
  noRetry: (of: { success: number }) =>
    `With a success of ${of.success} some tries fail, so retry must say how long another one takes`,
  notCarried: (of: { piece: string; source: string }) =>
    `The robot collects ${quoted(of.piece)} at ${quoted(of.source)}, so carries must say how many it holds`,
  otherwiseItself: (of: { finish: string }) =>
    `A failure at ${quoted(of.finish)} can not earn ${quoted(of.finish)} itself`,
  driveNowhere: (_: Record<string, never>) => 'A drive ends elsewhere than it begins: choose another spot',
  driveTwice: (_: Record<string, never>) =>
    'This drive has an own time already, the same both ways: choose other spots, or remove one of the two',
  lateHabit: (of: { teleop: number; departs: number }) =>
    `departs is time left in teleop, so at most ${of.teleop} s, got ${of.departs}`,
  longTrip: (of: { most: number; count: number }) =>
    `A trip is for at most as many pieces as the robot carries (${of.most}), got ${of.count}`,
  noShares: (_: Record<string, never>) => 'At least one number of pieces per trip needs a share above 0',
  slowPace: (of: { value: number }) => `pace stretches the time of a drive, so it must be at least 1, got ${of.value}`,
  openPace: (_: Record<string, never>) =>
    'pace must never be below 1; a lognormal one with a spread above 1 can be: use a range or samples',

  builtInStage: (of: { stage: string }) => `A stage can not be called “${of.stage}”: every leg has that one`,
  stageTwice: (of: { stage: string }) => `There are two stages with the id ${quoted(of.stage)}`,
  waitsForItself: (of: { stage: string }) => `The stage ${quoted(of.stage)} waits for itself`,
  waitsForUnknown: (of: { stage: string; before: string }) =>
    `The stage ${quoted(of.stage)} waits for ${quoted(of.before)}, which is not a stage here`,
  waitsTwice: (of: { stage: string; before: string }) =>
    `The stage ${quoted(of.stage)} names ${quoted(of.before)} twice`,
  circle: (of: { stages: readonly string[] }) =>
    `The stage ${quoted(of.stages[0] ?? '')} waits for itself: ${of.stages.join(' after ')}`,

  routineElsewhere: (of: { routine: string; start: string }) =>
    `The routine ${quoted(of.routine)} does not begin at the start ${quoted(of.start)}`,
  noHoldSeconds: (of: { goal: string }) =>
    `The goal ${quoted(of.goal)} pays for holding: holdSeconds must say how many seconds one piece buys there`,
  lateCall: (of: { teleop: number; at: number }) =>
    `at is time left in teleop, so at most ${of.teleop} s, got ${of.at}`,
  earlyDefence: (of: { teleop: number; from: number }) =>
    `from is time left in teleop, so at most ${of.teleop} s, got ${of.from}`,
  emptyDefence: (of: { from: number; until: number }) =>
    `from and until are times left, so until must be less than from (${of.from}), got ${of.until}`,
  nothingAccepted: (of: { goal: string }) => `The goal ${quoted(of.goal)} accepts nothing that this way collects`,

  noEntry: (of: { thing: 'source' | 'goal' | 'finish'; id: string }) =>
    `The robot has no entry for the ${of.thing} ${quoted(of.id)}`,
  noSuchEntry: (of: { goal: string; count: number; entry: number }) =>
    `entry must be less than ${of.count}, the number of ways in which the robot scores at ${quoted(of.goal)}, got ${of.entry}`,
} as const

export type Sentences = typeof sentences

/** A sentence by its name, with its parts. */
export type Said = { [Code in keyof Sentences]: { code: Code; parts: Parameters<Sentences[Code]>[0] } }[keyof Sentences]

type Parts<Code extends keyof Sentences> = Parameters<Sentences[Code]>[0]

/** A sentence to stand within another one. */
export function inner<Code extends keyof Sentences>(code: Code, parts: Parts<Code>): Inner {
  const say = sentences[code] as (of: Parts<Code>) => string
  return { code, parts, text: say(parts) }
}

/** A problem as the part of a sentence that says where it comes from. */
export const innerOf = ({ message, said }: Pick<Problem, 'message' | 'said'>): Inner => ({
  code: '',
  parts: {},
  ...said,
  text: message,
})

/** A problem that says one of the sentences. */
export function problem<Code extends keyof Sentences>(path: Path, code: Code, parts: Parts<Code>): Problem {
  return { path, message: inner(code, parts).text, said: { code, parts } }
}

/** The model's error with one of the sentences; `path`: the field, where it is known. */
export function refusal<Code extends keyof Sentences>(
  why: ModelErrorCode,
  [code, parts]: [code: Code, parts: Parts<Code>],
  path?: Path,
): ModelError {
  const { message, said } = problem([], code, parts)
  return new ModelError(why, message, path, said)
}
