import { createHash, randomBytes } from 'node:crypto'

/** 256 random bits as 43 letters of an address. */
export const newToken = (): string => randomBytes(32).toString('base64url')

/** What is kept of a token: random as it is, it needs no salt and no slow hash. */
export const hashOfToken = (token: string): string => createHash('sha256').update(token).digest('hex')
