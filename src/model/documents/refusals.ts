import type { DocumentKind } from './records.ts'
import { type Got, gotText } from './shapes.ts'

const nouns: { readonly [kind in DocumentKind]?: string } = { quickSheet: 'quick sheet' }

/** What is refused where documents are kept and rounds of guesses are held, in English. */
export const storedSentences = {
  noDocument: (of: { kind: DocumentKind; id: string; revision: number | null }) =>
    `There is no ${nouns[of.kind] ?? of.kind} with the id “${of.id}”${of.revision === null ? '' : ` in revision ${of.revision}`}`,
  inputTwice: (of: { id: string }) => `There are two inputs with the id “${of.id}”`,
  noInput: (of: { id: string }) => `There is no input with the id “${of.id}”`,
  fieldMissing: (_: Record<string, never>) =>
    'Wins and ranking points depend on who else plays: name two partners and three opponents',
  overriddenTwice: (of: { id: string }) => `The override “${of.id}” is about a number that is overridden already`,
  notCompared: (of: { thing: 'option' | 'design'; id: string }) =>
    `The ${of.thing} “${of.id}” is not among those compared`,
  chosenElsewhere: (of: { option: string }) =>
    `The option “${of.option}” that was chosen is not among those of the snapshot`,
  earlierItself: (_: Record<string, never>) => 'An event can not be its own earlier event',
  earlierOtherGame: (of: { event: string }) =>
    `The earlier event “${of.event}” is played by another game, so that its numbers say nothing here`,
  otherHead: (of: { field: 'id' | 'name'; inside: string; asked: string }) =>
    `The document says that its ${of.field} is “${of.inside}”, the request says “${of.asked}”`,

  noRound: (of: { code: string }) => `There is no round of guesses with the code “${of.code}”`,
  noWayOnSheet: (of: { sheet: string; way: string }) =>
    `The quick sheet “${of.sheet}” has no way with the id “${of.way}”`,
  noFinishToGuess: (of: { way: string }) => `The way “${of.way}” has no finish to be guessed`,
  roundsFull: (of: { most: number }) => `The quick sheet has ${of.most} rounds, and takes no more: save a copy of it`,
  roundClosed: (_: Record<string, never>) => 'The round is closed: its guesses can be seen, and no more are taken',
  devicesFull: (of: { most: number }) => `The round has guesses of ${of.most} devices, and takes no more`,
  correctionsFull: (of: { most: number }) =>
    `This device has corrected its guess ${of.most} times, and can not do so again`,
  notACode: (of: { got: Got }) => `a code has six letters and figures, such as K7M3PX, got ${gotText(of.got)}`,
  notASecret: (_: Record<string, never>) =>
    'what a device or a browser makes up for itself is 16 to 64 small letters and figures',
  closedBeforeOpened: (of: { code: string }) => `The round “${of.code}” is closed before it is opened`,
  codeTwice: (of: { code: string }) => `There are two rounds with the code “${of.code}”`,
  notYourRound: (_: Record<string, never>) =>
    'The round was opened in another browser: without its key it is closed only by saying “anyway”',
} as const
