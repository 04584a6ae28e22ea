import type { Guess } from '../../model/sheet/pool.ts'
import type { PrismaClient } from '../generated/client.ts'
import { hashOf } from './code.ts'
import { bringRounds, freeCode, keepRounds, TooManyRounds } from './file.ts'
import { type Client, devicesIn, findRound, guessesIn, roundOf } from './read.ts'
import {
  type Brought,
  type Given,
  type KeptRound,
  mostCorrections,
  mostDevices,
  mostRounds,
  type Round,
  type RoundStore,
  type RoundSubject,
} from './types.ts'

/** The rounds of one workspace: its id stands in every query because it is fixed here. */
export class DatabaseRounds implements RoundStore {
  readonly #client: PrismaClient
  readonly #workspaceId: string
  readonly #now: () => Date

  constructor(client: PrismaClient, workspaceId: string, now: () => Date) {
    this.#client = client
    this.#workspaceId = workspaceId
    this.#now = now
  }

  open({ about, ...subject }: RoundSubject, closingKey?: string): Promise<Round | null> {
    return this.#client.$transaction(async (transaction) => {
      const where = { workspaceId: this.#workspaceId, sheet: subject.sheet, removed: false }
      const before = await transaction.round.count({ where })
      if (before >= mostRounds) return null
      const code = await freeCode(transaction)
      const closingKeyHash = closingKey === undefined ? null : hashOf(code, closingKey)
      const row = { ...subject, code, about: JSON.stringify(about), openedAt: this.#now(), closingKeyHash }
      await transaction.round.create({ data: { ...row, workspaceId: this.#workspaceId } })
      return roundOf({ ...row, workspaceId: this.#workspaceId, closing: null, broughtAt: null, removed: false }, 0, 0)
    })
  }

  get(code: string): Promise<Round | null> {
    return this.#client.$transaction((transaction) => this.#find(transaction, code))
  }

  list(sheet: string): Promise<Round[]> {
    const where = { workspaceId: this.#workspaceId, sheet, removed: false }
    return this.#client.$transaction(async (transaction) => {
      const rows = await transaction.round.findMany({
        where,
        orderBy: [{ openedAt: 'desc' }, { code: 'asc' }],
        include: { closing: true },
      })
      const all = { workspaceId: this.#workspaceId, code: { in: rows.map(({ code }) => code) } }
      const devices = await devicesIn(transaction, all)
      return rows.map((row) => {
        const here = devices.get(row.code)
        return roundOf(row, here?.guessed.size ?? 0, here?.arrived.size ?? 0)
      })
    })
  }

  give(code: string, device: string, guess: Guess): Promise<Given> {
    return this.#client.$transaction(async (transaction): Promise<Given> => {
      const round = await this.#find(transaction, code)
      if (round === null) return { refused: 'missing' }
      if (round.closedAt !== null) return { refused: 'closed' }
      const key = { workspaceId: this.#workspaceId, code, device }
      const before = await transaction.guess.count({ where: key })
      if (before === 0 && round.count >= mostDevices) return { refused: 'tooManyDevices' }
      if (before > mostCorrections) return { refused: 'tooManyCorrections' }
      const { low, likely, high } = guess
      await transaction.guess.create({
        data: { ...key, sequence: before + 1, low, likely, high, givenAt: this.#now() },
      })
      return { given: { count: round.count + (before === 0 ? 1 : 0), corrected: before > 0 } }
    })
  }

  arrive(code: string, device: string): Promise<Round | null> {
    return this.#client.$transaction(async (transaction) => {
      const round = await this.#find(transaction, code)
      if (round === null || round.closedAt !== null || round.arrived >= mostDevices) return round
      const key = { workspaceId: this.#workspaceId, code, device }
      if ((await transaction.roundArrival.count({ where: key })) > 0) return round
      await transaction.roundArrival.create({ data: { ...key, arrivedAt: this.#now() } })
      return this.#find(transaction, code)
    })
  }

  close(
    code: string,
    by: { key?: string | undefined; anyway?: boolean } = {},
  ): Promise<Round | { refused: 'otherKey' } | null> {
    return this.#client.$transaction(async (transaction) => {
      const round = await this.#find(transaction, code)
      if (round === null || round.closedAt !== null) return round
      const where = { workspaceId_code: { workspaceId: this.#workspaceId, code } }
      const { closingKeyHash } = await transaction.round.findUniqueOrThrow({ where })
      const allowed = closingKeyHash === null || (by.key !== undefined && hashOf(code, by.key) === closingKeyHash)
      const anyway = !allowed && by.anyway === true
      if (!allowed && !anyway) return { refused: 'otherKey' }
      const closedAt = this.#now()
      await transaction.roundClosing.create({ data: { workspaceId: this.#workspaceId, code, closedAt, anyway } })
      return { ...round, closedAt: closedAt.toISOString(), closedAnyway: anyway }
    })
  }

  guesses(code: string): Promise<Guess[] | null> {
    return this.#client.$transaction(async (transaction) => {
      const round = await this.#find(transaction, code)
      return round === null || round.closedAt === null ? null : guessesIn(transaction, this.#workspaceId, code)
    })
  }

  async remove(code: string, undo = false): Promise<boolean> {
    const { count } = await this.#client.round.updateMany({
      where: { workspaceId: this.#workspaceId, code },
      data: { removed: !undo },
    })
    return count > 0
  }

  keep(sheet: string): Promise<KeptRound[]> {
    return this.#client.$transaction((transaction) => keepRounds(transaction, this.#workspaceId, sheet))
  }

  async bring(sheet: string, rounds: readonly KeptRound[]): Promise<Brought> {
    const at = { workspaceId: this.#workspaceId, sheet, now: this.#now() }
    try {
      return await this.#client.$transaction((transaction) => bringRounds(transaction, at, rounds))
    } catch (error) {
      if (error instanceof TooManyRounds) return { refused: 'tooManyRounds' }
      throw error
    }
  }

  #find(client: Client, code: string): Promise<Round | null> {
    return findRound(client, this.#workspaceId, code)
  }
}
