/** What the server or the model refuses, by its code; the sentence itself says more, in English. */
const itself = (sentence: string): string => sentence

export const refusals = {
  malformed: itself,
  unauthenticated: itself,
  forbidden: itself,
  notFound: itself,
  conflict: itself,
  tooLarge: itself,
  notJson: itself,
  unreachable: itself,
  overBudget: itself,
  notOffered: itself,
  tooMany: itself,
  internal: itself,
  busy: itself,
  storageFull: itself,
  noDatabase: itself,
  invalid: itself,
  outOfMemory: itself,
  unexpected: itself,
}
