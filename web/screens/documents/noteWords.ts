import { words } from '../../words/catalogue.ts'

/** The note that the server writes when a revision is restored is said in the reader's language; others are as written. */
export function noteWords(note: string): string {
  const [, revision] = /^Revision (\d+) restored$/.exec(note) ?? []
  return revision === undefined ? note : words().documents.revisions.restoredNote(Number(revision))
}
