import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { BrowserContext, Page } from '@playwright/test'
import Database from 'better-sqlite3'
import { expect, inject } from 'vitest'
import { hashed } from '../../../src/api/records/rows.ts'
import type { Observation, Row } from '../../../src/model/scouting/index.ts'
import { type Server, startServer } from '../../api/server.ts'
import { claim, join as invite, type Member } from '../../api/team.ts'
import { eventId, qualification } from '../harbourEvent.ts'
import { openEvent } from '../openEvent.ts'
import { type FaultyProxy, openProxy } from '../proxy.ts'
import { type Phone, startPhone } from './browser.ts'

/** A claimed server with an event, a proxy before it, and a phone with the built stands that reaches it through the proxy only. */
export interface Scene {
  server: Server
  proxy: FaultyProxy
  lead: Member
  mia: Member
  ben: Member
  phone: Phone
  /** Ends the browser without a word and starts it again on what is left, signed in as before. */
  crash(): Promise<Page>
  close(): Promise<void>
}

/** Who is signed in on the phone. Chromium writes cookies to its disk every half minute only; a killed one may have lost a fresh one. */
export async function signIn(context: BrowserContext, { url }: FaultyProxy, { cookie }: Member): Promise<void> {
  const [name, value] = cookie.split('=') as [string, string]
  await context.addCookies([{ name, value, url, httpOnly: true, sameSite: 'Strict' }])
}

export async function openScene(): Promise<Scene> {
  const folder = await mkdtemp(join(tmpdir(), 'cyclewright-phone-'))
  const { screens } = inject('ground')
  const server = await startServer({ webRoot: screens, pool: { threads: 1 } })
  await openEvent(server.url)
  const address = `/api/events/${eventId}/matches`
  const { mark } = (await server.get(address)).body
  const time = new Date().toISOString()
  const matches = [1, 2].map((number) => ({ ...qualification(number), time }))
  await server.send('PUT', address, { mark, matches })
  const lead = await claim(server)
  const mia = await invite(server, lead, { role: 'scout', nickname: 'Mia' })
  const ben = await invite(server, lead, { role: 'scout', nickname: 'Ben' })
  const assignments = `/api/events/${eventId}/assignments`
  const seats = (await lead.get(assignments)).body
  const own = { match: 'q2', seat: { alliance: 'red', position: 1 }, person: mia.id }
  await lead.send('PUT', assignments, { mark: seats.mark, assignments: [own] })
  const proxy = await openProxy(server.url)
  const scene: Scene = {
    server,
    proxy,
    lead,
    mia,
    ben,
    phone: await startPhone(folder),
    crash: async () => {
      await scene.phone.kill()
      scene.phone = await startPhone(folder)
      await signIn(scene.phone.context, proxy, mia)
      await scene.phone.page.goto(`${proxy.url}/stands/`)
      return scene.phone.page
    },
    close: async () => {
      await scene.phone.close()
      await proxy.close()
      await server.close()
      await rm(folder, { recursive: true, force: true })
    },
  }
  await signIn(scene.phone.context, proxy, mia)
  await scene.phone.page.goto(`${proxy.url}/stands/`)
  return scene
}

export const press = (page: Page, name: string | RegExp) =>
  page.getByRole('button', { name, exact: typeof name === 'string' })
export const link = (page: Page, name: string | RegExp) => page.getByRole('link', { name })

/** Begins a record of a robot of the first match, up to its form. */
export async function begin(page: Page): Promise<void> {
  await link(page, 'Another match or robot').click()
  await press(page, /^Blue, position 2/).click()
  await press(page, 'Go on').click()
}

/** The shortest record there is, made with the buttons. */
export async function record(page: Page): Promise<void> {
  await begin(page)
  await press(page, 'It does not come').click()
  await press(page, 'Right: keep it').click()
  await link(page, 'Another match or robot').waitFor()
}

/** Taps, and waits until the page says that it is kept. */
export async function tap(page: Page, name: string): Promise<void> {
  await press(page, name).click()
  await page.getByText(new RegExp(`^${name} at`)).waitFor()
}

/** What a phone tells its pages when it finds a network. */
export const online = (page: Page) => page.evaluate(() => dispatchEvent(new Event('online')))

/** What the page says of where its records are. */
export const says = (page: Page, phone: number, server: number, attention = 0) =>
  link(page, `${phone} on this phone, ${attention} need you, ${server} on the server`).waitFor()

export interface KeptRow {
  id: string
  state: string
  outcome?: string
  why?: string
  row: Row
}

/** The outbox as it lies in the browser's database, read past our own code. */
export const outboxOf = (page: Page): Promise<KeptRow[]> => everything<KeptRow>(page, 'outbox')

export const everything = <T>(page: Page, table: string): Promise<T[]> =>
  page.evaluate(
    (name) =>
      new Promise<T[]>((resolve, reject) => {
        const opened = indexedDB.open('cyclewright-stands')
        opened.onerror = () => reject(opened.error)
        opened.onsuccess = () => {
          const database = opened.result
          const asked = database.transaction(name).objectStore(name).getAll()
          asked.onsuccess = () => {
            database.close()
            resolve(asked.result as T[])
          }
        }
      }),
    table,
  )

/** Every row of the phone is on the server exactly once with the same contents, and nothing else is. */
export async function allThereOnce({ server }: Scene, page: Page, besides: readonly string[] = []): Promise<Row[]> {
  const kept = (await outboxOf(page)).filter(({ id }) => !besides.includes(id))
  const database = new Database(server.database.file, { readonly: true })
  const there = database.prepare('SELECT id, hash FROM FieldRecord').all() as { id: string; hash: string }[]
  const apart = database.prepare('SELECT count(*) FROM QuarantinedRecord').pluck().get()
  database.close()
  const byId = (a: { id: string }, b: { id: string }) => a.id.localeCompare(b.id)
  expect(there.sort(byId)).toEqual(kept.map(({ id, row }) => ({ id, hash: hashed(row).hash })).sort(byId))
  expect(kept.map(({ state }) => state)).toEqual(kept.map(() => 'server'))
  expect(apart).toBe(0)
  return kept.map(({ row }) => row).sort((a, b) => a.sequence - b.sequence)
}

/** How many rows the server has: what the phone says of itself is held against this. */
export async function heldBy({ lead }: Scene): Promise<number> {
  return (await lead.get(`/api/records?event=${eventId}`)).body.records.length
}

export const whatOf = (row: Row) => ((row.body as Observation).timeline ?? []).map(({ what, goal }) => goal ?? what)
