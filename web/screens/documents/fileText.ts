import { words } from '../../words/catalogue.ts'
import { plain } from '../../words/format.ts'

/** What the server reads of a document at most, and what a file with all its spaces can have then (bytes). */
const largest = { document: 2_000_000, file: 10_000_000 }

const tooLarge = (bytes: number): Error =>
  new Error(words().documents.file.tooLarge(plain(bytes / 1e6, 1), plain(largest.document / 1e6)))

/** The text of a file; throws a sentence for the person where it is too large or can not be read. */
export async function readText(file: File): Promise<string> {
  if (file.size > largest.file) throw tooLarge(file.size)
  try {
    return await file.text()
  } catch (error) {
    throw new Error(words().documents.file.notRead((error as Error).message))
  }
}

/** What JSON says; throws a sentence for the person where it is none, or more than the server reads. */
export function readJson(text: string): unknown {
  let read: unknown
  try {
    read = JSON.parse(text)
  } catch {
    throw new Error(words().documents.file.notJson)
  }
  const size = new Blob([JSON.stringify(read)]).size
  if (size > largest.document) throw tooLarge(size)
  return read
}
