import type { QuickLegName } from '../../model/documents/quickSheet.ts'
import type { Guess } from '../../model/sheet/pool.ts'
import type { PrismaClient } from '../generated/client.ts'
import type { TransactionClient } from '../generated/internal/prismaNamespace.ts'
import type { RoundClosingModel, RoundModel } from '../generated/models.ts'
import { hashOf, newCode } from './code.ts'
import {
  type Given,
  mostCorrections,
  mostDevices,
  mostRounds,
  type Round,
  type RoundStore,
  type RoundSubject,
  type RoundWords,
} from './types.ts'

type Client = Pick<TransactionClient, 'round' | 'guess' | 'roundArrival' | 'roundClosing'>

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
      const before = await transaction.round.count({ where: { workspaceId: this.#workspaceId, sheet: subject.sheet } })
      if (before >= mostRounds) return null
      let code = newCode()
      while (await this.#find(transaction, code)) code = newCode()
      const closingKeyHash = closingKey === undefined ? null : hashOf(code, closingKey)
      const row = { ...subject, code, about: JSON.stringify(about), openedAt: this.#now(), closingKeyHash }
      await transaction.round.create({ data: { ...row, workspaceId: this.#workspaceId } })
      return roundOf({ ...row, workspaceId: this.#workspaceId, closing: null }, 0, 0)
    })
  }

  get(code: string): Promise<Round | null> {
    return this.#client.$transaction((transaction) => this.#find(transaction, code))
  }

  list(sheet: string): Promise<Round[]> {
    const where = { workspaceId: this.#workspaceId, sheet }
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

  close(code: string, closingKey?: string): Promise<Round | { refused: 'otherKey' } | null> {
    return this.#client.$transaction(async (transaction) => {
      const round = await this.#find(transaction, code)
      if (round === null || round.closedAt !== null) return round
      const where = { workspaceId_code: { workspaceId: this.#workspaceId, code } }
      const { closingKeyHash } = await transaction.round.findUniqueOrThrow({ where })
      if (closingKeyHash !== null && (closingKey === undefined || hashOf(code, closingKey) !== closingKeyHash)) {
        return { refused: 'otherKey' }
      }
      const closedAt = this.#now()
      await transaction.roundClosing.create({ data: { workspaceId: this.#workspaceId, code, closedAt } })
      return { ...round, closedAt: closedAt.toISOString() }
    })
  }

  guesses(code: string): Promise<Guess[] | null> {
    return this.#client.$transaction(async (transaction) => {
      const round = await this.#find(transaction, code)
      if (round === null || round.closedAt === null) return null
      const rows = await transaction.guess.findMany({
        where: { workspaceId: this.#workspaceId, code },
        orderBy: { sequence: 'asc' },
      })
      const newest = new Map(rows.map(({ device, low, likely, high }) => [device, { low, likely, high }]))
      // Sorted, so that the order of arrival does not say whose guess it is.
      return [...newest.values()].sort((a, b) => a.likely - b.likely || a.low - b.low || a.high - b.high)
    })
  }

  async #find(client: Client, code: string): Promise<Round | null> {
    const where = { workspaceId: this.#workspaceId, code }
    const row = await client.round.findUnique({ where: { workspaceId_code: where }, include: { closing: true } })
    if (row === null) return null
    const devices = (await devicesIn(client, where)).get(code)
    return roundOf(row, devices?.guessed.size ?? 0, devices?.arrived.size ?? 0)
  }
}

interface Devices {
  guessed: Set<string>
  /** Whoever guesses has arrived, also without having said so. */
  arrived: Set<string>
}

/** By code: the devices that are in rounds. */
async function devicesIn(client: Client, where: { workspaceId: string; code: string | { in: string[] } }) {
  const select = { code: true, device: true } as const
  const guesses = await client.guess.findMany({ where, distinct: ['code', 'device'], select })
  const arrivals = await client.roundArrival.findMany({ where, select })
  const found = new Map<string, Devices>()
  const at = (code: string): Devices => {
    const known = found.get(code) ?? { guessed: new Set(), arrived: new Set() }
    found.set(code, known)
    return known
  }
  for (const { code, device } of guesses) {
    at(code).guessed.add(device)
    at(code).arrived.add(device)
  }
  for (const { code, device } of arrivals) at(code).arrived.add(device)
  return found
}

function roundOf(row: RoundModel & { closing: RoundClosingModel | null }, count: number, arrived: number): Round {
  return {
    code: row.code,
    sheet: row.sheet,
    way: row.way,
    leg: row.leg as QuickLegName,
    about: JSON.parse(row.about) as RoundWords,
    openedAt: row.openedAt.toISOString(),
    closedAt: row.closing?.closedAt.toISOString() ?? null,
    count,
    arrived,
    keyed: row.closingKeyHash !== null,
  }
}
