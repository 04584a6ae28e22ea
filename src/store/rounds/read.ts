import type { QuickLegName } from '../../model/documents/quickSheet.ts'
import type { Guess } from '../../model/sheet/pool.ts'
import type { TransactionClient } from '../generated/internal/prismaNamespace.ts'
import type { RoundClosingModel, RoundModel } from '../generated/models.ts'
import type { Round, RoundWords } from './types.ts'

export type Client = Pick<TransactionClient, 'round' | 'guess' | 'roundArrival' | 'roundClosing'>

/** A round that is not removed, or null. */
export async function findRound(client: Client, workspaceId: string, code: string): Promise<Round | null> {
  const where = { workspaceId, code }
  const row = await client.round.findUnique({ where: { workspaceId_code: where }, include: { closing: true } })
  if (row === null || row.removed) return null
  const devices = (await devicesIn(client, where)).get(code)
  return roundOf(row, devices?.guessed.size ?? 0, devices?.arrived.size ?? 0)
}

/** The newest guess of each device, sorted, so that the order of arrival does not say whose guess it is. */
export async function guessesIn(client: Client, workspaceId: string, code: string): Promise<Guess[]> {
  const rows = await client.guess.findMany({ where: { workspaceId, code }, orderBy: { sequence: 'asc' } })
  const newest = new Map(rows.map(({ device, low, likely, high }) => [device, { low, likely, high }]))
  return [...newest.values()].sort((a, b) => a.likely - b.likely || a.low - b.low || a.high - b.high)
}

interface Devices {
  guessed: Set<string>
  /** Whoever guesses has arrived, also without having said so. */
  arrived: Set<string>
}

/** By code: the devices that are in rounds. */
export async function devicesIn(client: Client, where: { workspaceId: string; code: string | { in: string[] } }) {
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

export function roundOf(
  row: RoundModel & { closing: RoundClosingModel | null },
  count: number,
  arrived: number,
): Round {
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
    closedAnyway: row.closing?.anyway ?? false,
    broughtAt: row.broughtAt?.toISOString() ?? null,
  }
}
