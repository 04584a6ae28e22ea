import { words } from '../../words/catalogue.ts'

/** A document's name as that of a file, which has no signs that a system may refuse. */
export const fileName = (name: string): string =>
  name.replace(/[^\p{L}\p{N}]+/gu, '-').replace(/^-|-$/g, '') || words().documents.file.noName
