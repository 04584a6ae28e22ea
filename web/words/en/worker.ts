const smaller =
  'carrying fewer pieces at once, fewer spots and ways to score, a smaller spread of what is done once per piece, or fewer measured times make it smaller'

export const worker = {
  tooLong: (seconds: number) =>
    `This computation would take too long and was stopped after ${seconds < 120 ? `${seconds} s` : `${seconds / 60} minutes`}; ${smaller}.`,
  tooLarge: `This computation would need more memory than your browser gives it and was stopped; ${smaller}.`,
  stopped: 'The computation was stopped.',
  notJoined: 'The draws could not be put together.',
  notStarted: 'The computation could not be started. Load the page again.',
}
