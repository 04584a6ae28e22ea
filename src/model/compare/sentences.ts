import { type Inner, innerText } from '../said.ts'

/** What a field of a document allows an input to make of its number. */
export type Allowed =
  | 'between 0 and 1'
  | 'at least 0'
  | 'above 0'
  | 'at least 1'
  | 'a whole number, at least 0'
  | 'a whole number, at least 1'
  | 'a multiple of 0.1 s, at least 0'
  | 'a finite number'
  | 'at least 0 s'
  | 'a spread of at least 1'
  | 'finite'

/** Why an input can not be put where its path leads; each ends the sentence `misplaced`. */
const reasons = {
  leadsElsewhere: (_: Record<string, never>) => "must lead into '/game' or '/options'",
  needsFactor: (_: Record<string, never>) => "names a Duration: choose 'factor' or 'add', or name one of its numbers",
  negativeFactor: (_: Record<string, never>) => 'can not be multiplied by a negative factor',
  namesNothing: (_: Record<string, never>) => 'names neither a number nor a Duration',
  fixedNumber: (_: Record<string, never>) => 'can not be an input',
  mustBe: (of: { allowed: Allowed }) => `must be ${of.allowed}`,
  keepsOrder: (of: { low: number; likely: number; high: number }) =>
    `must keep low ≤ likely ≤ high of its Duration, which would be ${of.low}, ${of.likely}, ${of.high}`,
  keepsPace: (_: Record<string, never>) => 'must keep every draw of the pace at 1 or above',
  wouldBe: (of: { found: number; why: Inner }) => `would be ${of.found}, but ${innerText(of.why)}`,
} as const

/** What comparisons, their inputs and their maps refuse, in English. */
export const compareSentences = {
  ...reasons,
  misplaced: (of: { input: string; value: number; pointer: string; why: Inner }) =>
    `Input '${of.input}' at ${of.value}: '${of.pointer}' ${innerText(of.why)}.`,
  ofInput: (of: { input: string; why: Inner }) => `Input '${of.input}': ${innerText(of.why)}`,
  notFinite: (of: { input: string; value: number }) => `Input '${of.input}' at ${of.value}: must be finite.`,
  wrongOrder: (of: { input: string; low: number; likely: number; high: number }) =>
    `Input '${of.input}' must have low ≤ likely ≤ high, got ${of.low}, ${of.likely}, ${of.high}.`,
  badMeasurement: (of: { input: string; value: number }) =>
    `perMeasurement of input '${of.input}' must be at least 0, got ${of.value}.`,
  likelyImpossible: (of: { why: Inner }) => `With all inputs likely: ${innerText(of.why)}.`,
  inputImpossible: (of: { input: string; value: number; why: Inner }) =>
    `Input '${of.input}' at ${of.value}: ${innerText(of.why)}.`,
  noSuchInput: (of: { input: string }) => `There is no input '${of.input}'.`,
  comparedTwice: (of: { list: 'options' | 'inputs'; id: string }) => `The id '${of.id}' is there twice in ${of.list}.`,
  sameAxes: (of: { input: string }) => `A map needs two different inputs, got '${of.input}' twice.`,
  collectsNothing: (of: { option: string; spot: string }) => `'${of.option}' collects nothing at '${of.spot}'.`,

  pathStart: (of: { pointer: string }) =>
    `The path '${of.pointer}' must begin with '/', like '/options/0/robot/form/spread'.`,
  pathTilde: (of: { pointer: string }) => `The path '${of.pointer}' has a '~' that is not followed by 0 or 1.`,
  pathNowhere: (of: { pointer: string; token: string }) =>
    `The path '${of.pointer}' leads nowhere: there is no '${of.token}'.`,
} as const
