import type { Entered, EnteringDevice } from '../../store/types.ts'
import { ApiError } from '../errors.ts'
import { type ApiSaid, say } from '../sentences.ts'
import type { OpenContext } from '../trpc.ts'
import { refusalOf } from './passphrase.ts'

/** What the browser is told of who is signed in. */
export const sessionOf = ({ door, session, who }: Pick<OpenContext, 'door' | 'session' | 'who'>) => ({
  claimed: door.isClaimed(),
  workspace: session?.workspace ?? null,
  person: session?.person ?? null,
  device: session?.device ?? null,
  role: who?.role ?? null,
})

/** The device of a request, with the session that it bears already. */
export const deviceOf = (
  { session }: OpenContext,
  device: { id?: string | undefined; name: string },
): EnteringDevice => ({
  ...device,
  signedIn: session?.device.id ?? null,
})

/** Keeps the fresh session in the browser, and writes down that somebody came in. */
export async function letIn(context: OpenContext, { token, session }: Entered, action: string) {
  context.door.begin(token)
  await note(context, session, action)
  const { person, device, workspace } = session
  return { claimed: true, workspace, person, device, role: person.role }
}

/** In the log of the workspace that is entered, which need not be that of the request. */
export async function note(
  { store, log }: OpenContext,
  { workspaceId, person, device }: { workspaceId: string; person: { id: string }; device?: { id: string } },
  action: string,
): Promise<void> {
  const entry = { person: person.id, device: device?.id ?? null, action, subject: '', detail: {} }
  await store.workspace(workspaceId).audit.note(entry).catch(log)
}

const statusOf = { linkUnknown: 'notFound', nicknameMissing: 'malformed' } as const

/** An error for a link that opens nothing, or a nickname that can not be had. */
export function refused(
  why: 'linkUnknown' | 'linkUsed' | 'linkExpired' | 'linkWithdrawn' | 'nicknameTaken' | 'nicknameMissing',
  nickname = '',
): ApiError {
  const said: ApiSaid = why === 'nicknameTaken' ? { code: why, parts: { nickname } } : { code: why, parts: {} }
  const code = why in statusOf ? statusOf[why as keyof typeof statusOf] : 'conflict'
  return new ApiError({ code, ...say(said), path: [why.startsWith('link') ? 'token' : 'nickname'] })
}

/** Throws where a passphrase is too short or too well known. */
export function checkPassphrase(passphrase: string, nickname: string): void {
  const said = refusalOf(passphrase, nickname)
  if (said) throw new ApiError({ code: 'malformed', ...say(said), path: ['passphrase'] })
}
