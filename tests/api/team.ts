import { type Role, roles } from '../../src/api/who.ts'
import type { Answer, Server } from './server.ts'

export const passphrase = 'seven gulls above the quay'

/** Somebody who is signed in: the same calls as a server's, with a session. */
export interface Member {
  id: string
  device: string
  cookie: string
  get(path: string): Promise<Answer>
  send(method: string, path: string, body?: unknown, headers?: HeadersInit): Promise<Answer>
}

/** What a browser would send back of the cookie that an answer sets. */
export const cookieOf = ({ headers }: Answer): string => headers.getSetCookie()[0]?.split(';')[0] ?? ''

export function memberOf(server: Server, answer: Answer): Member {
  const cookie = cookieOf(answer)
  return {
    id: answer.body.person.id,
    device: answer.body.device.id,
    cookie,
    get: (path) => server.get(path, { cookie }),
    send: (method, path, body, headers) =>
      body === undefined
        ? server.bare(method, path, { cookie, ...headers })
        : server.send(method, path, body, { cookie, ...headers }),
  }
}

export async function claimToken({ store }: Server, workspace = 'default', hours = 1): Promise<string> {
  return (await store.entrance.claimLink(await store.ensureWorkspace(workspace), hours)).token
}

/** The first lead of a workspace. */
export async function claim(server: Server, { workspace = 'default', nickname = 'Ada' } = {}): Promise<Member> {
  const token = await claimToken(server, workspace)
  const sent = { token, nickname, passphrase, device: { name: 'Laptop' } }
  return memberOf(server, await server.send('POST', '/api/session/claim', sent))
}

/** Somebody whom a lead invites. */
export async function join(server: Server, lead: Member, { role, nickname }: { role: Role; nickname: string }) {
  const { body } = await lead.send('POST', '/api/invitations', { role, nickname, hours: 1 })
  const sent = { token: body[0].token, device: { name: 'Phone' }, ...(role === 'lead' && { passphrase }) }
  return memberOf(server, await server.send('POST', '/api/invitations/accept', sent))
}

/** One member of each role. */
export async function team(server: Server): Promise<{ [role in Role]: Member }> {
  const lead = await claim(server)
  const others: [Role, Member][] = []
  for (const role of roles.filter((each) => each !== 'lead')) {
    others.push([role, await join(server, lead, { role, nickname: `One ${role}` })])
  }
  return { lead, ...Object.fromEntries(others) } as { [role in Role]: Member }
}
