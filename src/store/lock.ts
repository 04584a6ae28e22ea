/** Gives one holder at a time the right to go on, in the order of asking. */
export class Lock {
  #last: Promise<void> = Promise.resolve()

  /** Resolves when it is the caller's turn, with the function that ends it. */
  async acquire(): Promise<() => void> {
    const before = this.#last
    let release = () => {}
    this.#last = new Promise((resolve) => {
      release = resolve
    })
    await before
    return release
  }

  async hold<Result>(work: () => Promise<Result>): Promise<Result> {
    const release = await this.acquire()
    try {
      return await work()
    } finally {
      release()
    }
  }
}
