import { newCode } from './code.ts'
import { type Client, guessesIn } from './read.ts'
import { type Brought, type KeptRound, mostRounds, type RoundWords } from './types.ts'

/**
 * A code that no round has, of whichever workspace, because a phone without a session knows a round by its code alone; a
 * removed one has it still: it may be brought back.
 */
export async function freeCode(client: Client): Promise<string> {
  for (;;) {
    const code = newCode()
    if ((await client.round.count({ where: { code } })) === 0) return code
  }
}

/** The closed rounds of a sheet, oldest first; what is open stays hidden here as everywhere. */
export async function keepRounds(client: Client, workspaceId: string, sheet: string): Promise<KeptRound[]> {
  const rows = await client.round.findMany({
    where: { workspaceId, sheet, removed: false, closing: { isNot: null } },
    orderBy: [{ openedAt: 'asc' }, { code: 'asc' }],
    include: { closing: true },
  })
  const kept: KeptRound[] = []
  for (const { code, way, leg, about, openedAt, closing } of rows) {
    kept.push({
      code,
      way,
      leg: leg as KeptRound['leg'],
      about: JSON.parse(about) as RoundWords,
      openedAt: openedAt.toISOString(),
      closedAt: (closing?.closedAt ?? openedAt).toISOString(),
      guesses: await guessesIn(client, workspaceId, code),
    })
  }
  return kept
}

interface Target {
  workspaceId: string
  sheet: string
  now: Date
}

/**
 * Adds rounds of a file to a sheet. A round is here already when one of the same leg was opened at the same moment; its
 * code may be another one here. If it was removed it is brought back, because the file is asked to be here.
 */
export async function bringRounds(client: Client, at: Target, rounds: readonly KeptRound[]): Promise<Brought> {
  const { workspaceId, sheet } = at
  const fresh: KeptRound[] = []
  for (const round of rounds) {
    const { way, leg } = round
    const where = { workspaceId, sheet, way, leg, openedAt: new Date(round.openedAt) }
    const { count } = await client.round.updateMany({ where, data: { removed: false } })
    if (count === 0) fresh.push(round)
  }
  const before = await client.round.count({ where: { workspaceId, sheet, removed: false } })
  if (before + fresh.length > mostRounds) throw new TooManyRounds()
  for (const round of fresh) await add(client, at, round)
  return { added: fresh.length, already: rounds.length - fresh.length }
}

/** Thrown, so that the transaction takes back what it had brought back. */
export class TooManyRounds extends Error {}

async function add(client: Client, { workspaceId, sheet, now }: Target, round: KeptRound): Promise<void> {
  const taken = (await client.round.count({ where: { code: round.code } })) > 0
  const key = { workspaceId, code: taken ? await freeCode(client) : round.code }
  const { way, leg, about, guesses } = round
  const [openedAt, closedAt] = [new Date(round.openedAt), new Date(round.closedAt)]
  await client.round.create({
    data: { ...key, sheet, way, leg, about: JSON.stringify(about), openedAt, broughtAt: now },
  })
  await client.guess.createMany({
    data: guesses.map(({ low, likely, high }, index) => ({
      ...key,
      // A device's own name is 16 letters and more: no phone can correct a guess of a file.
      device: String(index),
      sequence: 1,
      ...{ low, likely, high },
      givenAt: closedAt,
    })),
  })
  await client.roundClosing.create({ data: { ...key, closedAt } })
}
