import { words } from '../../words/catalogue.ts'

/** Which revision a note says to be restored, as the server writes it; null where it says something else. */
export function restoredFrom(note: string | null): number | null {
  const [, revision] = /^Revision (\d+) restored$/.exec(note ?? '') ?? []
  return revision === undefined ? null : Number(revision)
}

/** The note that the server writes when a revision is restored is said in the reader's language; others are as written. */
export function noteWords(note: string): string {
  const revision = restoredFrom(note)
  return revision === null ? note : words().documents.revisions.restoredNote(revision)
}
