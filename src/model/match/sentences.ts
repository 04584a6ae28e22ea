/** What a match is refused for, in English. */
export const matchSentences = {
  otherLevel: (of: { bonus: string; level: string; known: readonly string[] }) =>
    `The bonus “${of.bonus}” asks for different amounts by the event’s level, and says nothing about “${of.level}”: its levels are ${of.known.join(', ')}`,
} as const
