import { hash, verify } from '@node-rs/argon2'
import { ApiError } from '../errors.ts'
import { type ApiSaid, say } from '../sentences.ts'
import { common } from './common.ts'

/** Argon2id with 19 MiB, two passes, one lane: OWASP’s Password Storage Cheat Sheet and ASVS 5.0, appendix on password storage. */
export const cost = { memoryCost: 19_456, timeCost: 2, parallelism: 1 } as const

/** Shortest passphrase, in characters. There is no rule about which characters. */
export const least = 12
export const longest = 200

/** Hashes at once: more would take both cores from phones that hand in records. */
const most = 2
/** Then others are told to come back. */
const mostWaiting = 30

let running = 0
const waiting: (() => void)[] = []

async function inTurn<Result>(work: () => Promise<Result>): Promise<Result> {
  if (running >= most) {
    if (waiting.length >= mostWaiting) {
      throw new ApiError({ code: 'busy', ...say({ code: 'manySigningIn', parts: {} }), retryAfter: 3 })
    }
    await new Promise<void>((resolve) => waiting.push(resolve))
  } else running++
  try {
    return await work()
  } finally {
    const next = waiting.shift()
    if (next) next()
    else running--
  }
}

/** The same letters in the same bytes, on whichever keyboard they were typed. */
const plain = (passphrase: string): string => passphrase.normalize('NFKC')

/** The hash of a passphrase, in the PHC string format. */
export const hashOf = (passphrase: string): Promise<string> => inTurn(() => hash(plain(passphrase), cost))

let nobodys: Promise<string> | null = null

/** Whether a passphrase is that of a hash. Without a hash the answer is no, and takes as long. */
export async function isPassphrase(passphrase: string, hashed: string | null): Promise<boolean> {
  nobodys ??= hash('a passphrase that nobody has, to take as long as those that somebody has', cost)
  const against = hashed ?? (await nobodys)
  const same = await inTurn(() => verify(against, plain(passphrase)))
  return same && hashed !== null
}

/** Why a passphrase is not taken; null: it is. */
export function refusalOf(passphrase: string, nickname: string): ApiSaid | null {
  const letters = [...plain(passphrase)]
  if (letters.length < least) return { code: 'shortPassphrase', parts: { least, got: letters.length } }
  return common(plain(passphrase), nickname) ? { code: 'commonPassphrase', parts: {} } : null
}
