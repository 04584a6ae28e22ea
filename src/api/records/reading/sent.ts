import type { Cells, SharedBytes } from '../../../store/types.ts'
import type { RowRead } from './batch.ts'

/** The request that a row came with. */
export interface Sent {
  /** All its rows as threads share them, with their bodies where they are at hand. */
  readonly packed: SharedBytes | undefined
  /** All its rows once more, with their bodies. */
  whole(): Promise<RowRead[]>
  /** From now on these rows are known when the same is sent again, as by a phone that missed the answer. */
  remember(rows: readonly Cells[]): void
}

/** A row of a body that was read already. Only the server makes them: no JSON becomes one. */
export class SentRow {
  readonly read: RowRead
  readonly of: Sent

  constructor(read: RowRead, of: Sent) {
    this.read = read
    this.of = of
  }
}
