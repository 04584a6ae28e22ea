import type { Part } from '../timing/parts.ts'

/** A part of the shelf. The document's id and name are the part's own. */
export interface PartRecord {
  format: 1
  part: Part
}
