import type { SharedRows } from '../../../store/types.ts'
import type { RowRead } from './batch.ts'

/** The request that rows came with. */
export interface Sent {
  /** All rows once more, one by one and with their bodies. */
  whole(): Promise<RowRead[]>
  /** From now on these rows are known when the same is sent again, as by a phone that missed the answer. */
  remember(): void
}

/** All rows of a body that was read already, in the place of the rows. Only the server makes it: no JSON becomes one. */
export class SentRows {
  readonly read: readonly RowRead[] | SharedRows
  readonly of: Sent

  constructor(read: readonly RowRead[] | SharedRows, of: Sent) {
    this.read = read
    this.of = of
  }
}
