/** The database can not be used as it is; the message is for the person who starts the server. */
export class StoreError extends Error {
  constructor(message: string, cause?: unknown) {
    super(message, { cause })
    this.name = 'StoreError'
  }
}
