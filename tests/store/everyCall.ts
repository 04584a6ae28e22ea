import { hashed } from '../../src/api/records/rows.ts'
import { cellsOf, type Row } from '../../src/model/scouting/index.ts'
import type { Store, WorkspaceStore } from '../../src/store/types.ts'
import { eventOf, fillSeason, lineId, rowsOf, type Size } from '../bench/growth/season.ts'

const by = { person: null, device: null }

/** Small: what is asked is the same whatever the size. */
const size: Size = { events: 2, teams: 12, matches: 3, observers: 1 }

const parts = ['events', 'exchange', 'forecasts', 'plans', 'selection', 'rounds', 'jobs', 'records'] as const
const ofPeople = ['people', 'invitations', 'audit'] as const

/** The same object, with each call of a method noted under its name. */
function noting<Of extends object>(of: Of, name: string, calls: Set<string>): Of {
  return new Proxy(of, {
    get: (target, property) => {
      const value = Reflect.get(target, property)
      if (typeof value === 'function')
        return (...given: unknown[]) => {
          calls.add(`${name}${String(property)}`)
          return value.apply(target, given)
        }
      const isPart = [...parts, ...ofPeople].some((part) => part === property)
      return isPart ? noting(value as object, `${String(property)}.`, calls) : value
    },
  })
}

const methodsOf = (of: object, name = ''): string[] =>
  Object.getOwnPropertyNames(Object.getPrototypeOf(of))
    .filter((method) => method !== 'constructor' && typeof Reflect.get(of, method) === 'function')
    .map((method) => `${name}${method}`)

/** Calls every method of a workspace and of the entrance at least once; returns those that it did not call, which is nobody's wish. */
export async function everyCall(store: Store): Promise<string[]> {
  const id = await store.ensureWorkspace('team')
  const calls = new Set<string>()
  const bare = store.workspace(id)
  const team = noting(bare, '', calls)
  const entrance = noting(store.entrance, 'entrance.', calls)
  await fillSeason(team, size)
  await documents(team)
  await events(team)
  await records(team)
  await jobsAndRounds(team)
  await people(team, entrance, id)
  await store.isEmpty()
  await store.workspaceOfRound('nothing')
  const all = [
    ...methodsOf(bare),
    ...[...parts, ...ofPeople].flatMap((part) => methodsOf(bare[part], `${part}.`)),
    ...methodsOf(store.entrance, 'entrance.'),
  ]
  return all.filter((method) => !calls.has(method))
}

async function documents(team: WorkspaceStore): Promise<void> {
  await team.list('option')
  await team.list('option', true)
  await team.get('option', 'option-1')
  await team.get('option', 'option-1', 1)
  await team.newest('option', 'option-1')
  await team.revisions('option', 'option-1')
  await team.restore('option', 'option-1', 1, 3)
  await team.remove('option', 'option-2')
  await team.exchange.named()
  await team.exchange.forgetName('nobody')
}

async function events(team: WorkspaceStore): Promise<void> {
  const id = eventOf(1)
  await team.events.marks(id, 100)
  await team.events.results(id)
  await team.events.standing(id)
  await team.events.resultHistory(id, 'q1')
  await team.events.recordCounts(id)
  await team.events.takeSeat(id, { match: 'q1', seat: { alliance: 'red', position: 1 }, person: 'person-9', by })
  await team.forecasts.of(id)
  await team.forecasts.count(id)
  await team.forecasts.of(id, 'q1')
  await team.plans.of(id)
  await team.plans.count(id)
  await team.selection.lines(id)
  const contents = (await team.exchange.contents(id))!
  const texts = new Map(contents.records.map(({ row }) => [hashed(row).hash, hashed(row).text]))
  for (const preview of [true, false]) await team.exchange.bring({ contents, texts }, { preview, by, kind: 'archive' })
}

async function records({ records: store }: WorkspaceStore): Promise<void> {
  const id = eventOf(1)
  const rows = rowsOf(id, { phone: 900, place: 0 }, size)
  const other = rows.map((row): Row => ({ ...row, made: '2031-01-01T10:00:00.000Z' }))
  const device = 'phone-900'
  for (const sent of [rows, rows, other])
    await store.accept({
      device,
      person: null,
      session: device,
      unsent: 0,
      rows: sent.map((row) => cellsOf(hashed(row))),
    })
  const all = await store.list(id)
  await store.list(id, { after: all[3]!.arrival, limit: 2, kinds: ['observation'] })
  await store.log(id)
  store.logKept(id)
  await store.since(id, 1)
  await store.get(rows.map((row) => row.id))
  await store.chain(rows[0]!.id)
  await store.receipt(device)
  await store.schedule(id)
  const [first] = rows as [Row]
  const hash = hashed({ ...first, id: lineId(1) })
  await store.replace([{ hashed: hash, replaces: first.id }], null)
  await store.waiting(id)
  const [apart] = await store.apart(id)
  const adds = { hashed: hashed({ ...first, id: lineId(2) }), replaces: null }
  await store.resolve(apart!.arrival, { before: null, resolution: 'replaced', person: null, adds })
  await store.choose(id, { match: 'q1', team: '90001', record: first.id, person: null, reason: null })
  await store.choices(id)
  const drill = await store.startDrill(id, null)
  await store.drills(id)
  await store.endDrill(id, drill.id)
}

async function jobsAndRounds({ jobs, rounds }: WorkspaceStore): Promise<void> {
  const job = (await jobs.add({ kind: 'match', name: null, request: {} }, 5))!
  await jobs.start(job.id)
  await jobs.replaced(job.id)
  await jobs.wait(job.id)
  await jobs.get(job.id)
  await jobs.list()
  await jobs.events(job.id, 0)
  await jobs.interrupt({ code: 'stopped', message: 'It was stopped' } as Parameters<typeof jobs.interrupt>[0])
  await jobs.remove(job.id)
  const [round] = await rounds.list('sheet')
  const { code } = round!
  await rounds.get(code)
  await rounds.arrive(code, 'phone-9')
  await rounds.close(code)
  await rounds.guesses(code)
  const kept = await rounds.keep('sheet')
  await rounds.bring('other', kept)
  await rounds.remove(code)
}

async function people(team: WorkspaceStore, entrance: Store['entrance'], workspace: string): Promise<void> {
  const device = { name: 'Laptop' }
  const { token } = await entrance.claimLink(workspace, 1)
  await entrance.isClaimed()
  await entrance.claimRefusal(token)
  const claimed = await entrance.claim(token, { nickname: 'Ada', passphraseHash: 'x', device })
  if (!('session' in claimed)) throw new Error(claimed.refused)
  const lead = claimed.session.person.id
  const asked = { role: 'scout' as const, nickname: 'Bo', event: null, createdBy: lead, hours: 1 }
  const invited = await team.invitations.create(asked)
  await entrance.welcome(invited.token)
  const scout = await entrance.accept(invited.token, { nickname: null, passphraseHash: null, device })
  if (!('session' in scout)) throw new Error(scout.refused)
  const { person } = scout.session
  await team.invitations.withdraw((await team.invitations.create({ ...asked, nickname: null })).invitation.id)
  await team.invitations.list()
  await entrance.account('team', 'ada')
  await entrance.enter(workspace, lead, device)
  await entrance.session(claimed.token)
  await team.people.list()
  await team.people.get(lead)
  await team.people.changeRole(person.id, 'viewer')
  await team.people.passphraseHash(lead)
  await team.people.setPassphrase(lead, 'y')
  const [one] = await team.people.devices()
  await team.people.renameDevice(one!.id, 'Phone')
  await team.people.report(one!.id, { unsent: 2 })
  await team.people.revoke(scout.session.device.id)
  await team.people.revokeAll(lead)
  await team.people.end(person.id)
  await team.people.end(person.id, true)
  await team.people.held(person.id)
  await team.people.erase(person.id, { nickname: 'Bo', by })
  await team.audit.note({ ...by, action: 'test', subject: '', detail: {} })
  await team.audit.list({ limit: 5 })
  await team.audit.list({ before: 9, limit: 5 })
}
