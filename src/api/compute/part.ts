/** How a long computation is told to stop, and whom it tells how far it is. */
export interface Part {
  signal: AbortSignal
  /** Counted in what its parts are made of: matches, or parts of a comparison. */
  progress?: ((done: number, total: number) => void) | undefined
}
