/** Around codes for a camera, in the screens and in the stands. */
export const codes = {
  stands: 'One code holds everything: it stands still until it was read.',
  runs: (needed: number) => `A running sequence; ${needed} different codes are enough, whichever they are.`,
  slower: 'Slower (two a second)',
  reader: 'Camera for codes',
  opening: 'Opening the camera …',
  hold: 'Hold the code into the picture until it fills most of the square.',
  picture: 'The camera’s picture',
  nothingYet: 'No code seen yet.',
  partly: (have: number, needed: number) => `${have} of ${needed} codes are in; keep holding.`,
  whole: 'Read whole.',
  lamp: 'Lamp',
  sound: 'Tone when read',
  closeCamera: 'Close the camera',
  again: 'Try again',
  trouble: {
    insecure:
      'This browser offers its camera only over https or on the server’s own machine. Use the network or a file instead.',
    refused: 'The camera was not allowed. Allow it for this address in the browser’s settings, then try again.',
    none: 'No camera was found. Connect one and try again, or use another way.',
    busy: 'Another program holds the camera. Close it and try again.',
  },
  problem: {
    foreign: 'This is some other code, not one of this program.',
    newer: 'This code was made by a newer version. Load this page anew, then show the code again.',
    damaged: 'The code could not be read whole. Show it again.',
    otherGame: 'These records were made with a revision of the game that is not known here.',
  },
  file: {
    foreign: 'This file does not hold records of this program.',
    newer: 'This file was made by a newer version. Load this page anew, then choose it again.',
    damaged: 'Some records in this file can not be read, so none was taken. Make the file anew on the phone.',
  },
}
