/** foreign: not one of our codes. newer: made by a later version. damaged: it does not add up. otherGame: it needs another revision of the game. */
export type CodeFailure = 'foreign' | 'newer' | 'damaged' | 'otherGame'

const sentences: { [Code in CodeFailure]: string } = {
  foreign: 'This is not a code of this program.',
  newer: 'This code was made by a newer version; load this page anew, then show it again.',
  damaged: 'The code was not read whole; show it again.',
  otherGame: 'The code was made with another revision of the game than the one that is here.',
}

/** A code that can not be read, with a sentence for whoever holds it before the camera. */
export class CodeError extends Error {
  readonly code: CodeFailure
  constructor(code: CodeFailure) {
    super(sentences[code])
    this.name = 'CodeError'
    this.code = code
  }
}
