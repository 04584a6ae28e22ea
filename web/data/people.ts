import { useInfiniteQuery, useMutation, useQuery, useQueryClient } from '@tanstack/react-query'
import type { Role } from '../../src/model/scouting/roles.ts'
import type { AuditEntry, Device, Invitation, NamedPerson, Person } from '../../src/store/types.ts'
import { client, said } from './api.ts'
import { forgetPacks } from './forgetPacks.ts'
import type { Session } from './session.ts'
import { askSignIn } from './signIn.ts'

const kept = 'cyclewright/member-device'

/** What the server calls this device, so that it stays the same one when somebody comes in on it again. */
function deviceNamed(name: string): { id?: string; name: string } {
  try {
    const id = localStorage.getItem(kept)
    return id ? { id, name } : { name }
  } catch {
    return { name }
  }
}

function keepDevice({ device }: Session): void {
  try {
    if (device) localStorage.setItem(kept, device.id)
  } catch {
    // Then it is another device next time.
  }
}

export interface SignIn {
  nickname: string
  passphrase: string
  device: string
  workspace?: string
}

/** Ways in. Whoever has come in sees everything asked for anew, and nothing typed is touched. */
export function useEntrance() {
  const queries = useQueryClient()
  const entered = async (session: Session) => {
    keepDevice(session)
    askSignIn(false)
    forgetPacks()
    // Not awaited: what was refused before comes now, while the panel is already gone.
    // An invitation that was taken up is not asked for again: it would be said to be used.
    void queries.invalidateQueries({ predicate: ({ queryKey }) => queryKey[0] !== 'welcome' })
  }
  const signIn = useMutation({
    mutationFn: ({ nickname, passphrase, device, workspace }: SignIn): Promise<Session> =>
      said(
        client.session.signIn.mutate({
          nickname,
          passphrase,
          device: deviceNamed(device),
          ...(workspace ? { workspace } : {}),
        }),
      ),
    onSuccess: entered,
  })
  const claim = useMutation({
    mutationFn: ({
      token,
      nickname,
      passphrase,
      device,
    }: Omit<SignIn, 'workspace'> & { token: string }): Promise<Session> =>
      said(client.session.claim.mutate({ token, nickname, passphrase, device: deviceNamed(device) })),
    onSuccess: entered,
  })
  const accept = useMutation({
    mutationFn: (of: { token: string; device: string; nickname?: string; passphrase?: string }) =>
      said(client.invitations.accept.mutate({ ...of, device: deviceNamed(of.device) })),
    onSuccess: entered,
  })
  const signOut = useMutation({
    mutationFn: (everywhere: boolean) => said(client.session.signOut.mutate({ everywhere })),
    onSuccess: () => {
      forgetPacks()
      return queries.invalidateQueries()
    },
  })
  const changePassphrase = useMutation({
    mutationFn: (of: { current?: string; passphrase: string }) => said(client.session.changePassphrase.mutate(of)),
  })
  return { signIn, claim, accept, signOut, changePassphrase }
}

/** What an invitation is for. */
export const useWelcome = (token: string) =>
  useQuery({
    queryKey: ['welcome', token],
    queryFn: () => said(client.invitations.look.mutate({ token })),
    retry: false,
    staleTime: Number.POSITIVE_INFINITY,
  })

/** Members, and who was one: for leads. */
export const usePeople = (enabled = true) =>
  useQuery({ queryKey: ['people'], queryFn: (): Promise<Person[]> => said(client.people.list.query({})), enabled })

/** Where everything that is held of a person is saved as a file. */
export const personalDataAt = (person: string): string => `/api/people/${encodeURIComponent(person)}/data`

/** Those who came with files of events; null: that name was removed. */
export const useNamed = () =>
  useQuery({
    queryKey: ['people', 'named'],
    queryFn: (): Promise<NamedPerson[]> => said(client.named.list.query({})),
  })

/** Asked again now and then: phones report what they hold. */
export const useDevices = () =>
  useQuery({
    queryKey: ['devices'],
    queryFn: (): Promise<Device[]> => said(client.devices.list.query({})),
    refetchInterval: 30_000,
  })

export const useInvitations = () =>
  useQuery({
    queryKey: ['invitations'],
    queryFn: (): Promise<Invitation[]> => said(client.invitations.list.query({})),
    refetchInterval: 15_000,
  })

const page = 50

export const useAudit = () =>
  useInfiniteQuery({
    queryKey: ['audit'],
    queryFn: ({ pageParam }): Promise<AuditEntry[]> =>
      said(client.audit.list.query({ limit: page, ...(pageParam === null ? {} : { before: pageParam }) })),
    initialPageParam: null as number | null,
    getNextPageParam: (last) => (last.length < page ? undefined : (last.at(-1)?.sequence ?? undefined)),
  })

export interface Invited {
  invitation: Invitation
  token: string
}

/** What leads do with people, devices and invitations; all lists follow. */
export function usePeopleChanges() {
  const queries = useQueryClient()
  const onSuccess = async () => {
    const lists = ['people', 'devices', 'invitations', 'audit', 'session'].map((key) => [key])
    await Promise.all(lists.map((queryKey) => queries.invalidateQueries({ queryKey })))
  }
  const changeRole = useMutation({
    mutationFn: (of: { person: string; role: Role }) => said(client.people.changeRole.mutate(of)),
    onSuccess,
  })
  const end = useMutation({
    mutationFn: (of: { person: string; undo: boolean }) => said(client.people.end.mutate(of)),
    onSuccess,
  })
  const erase = useMutation({
    mutationFn: (of: { person: string; nickname: string }) => said(client.people.erase.mutate(of)),
    onSuccess,
  })
  const forget = useMutation({
    mutationFn: (person: string) => said(client.named.forget.mutate({ person })),
    onSuccess,
  })
  const revoke = useMutation({
    mutationFn: (device: string) => said(client.devices.revoke.mutate({ device })),
    onSuccess,
  })
  const rename = useMutation({
    mutationFn: (of: { device: string; name: string }) => said(client.devices.rename.mutate(of)),
    onSuccess,
  })
  const signOut = useMutation({
    mutationFn: (person: string) => said(client.people.signOut.mutate({ person })),
    onSuccess,
  })
  const invite = useMutation({
    mutationFn: (of: {
      role: Role
      hours: number
      count: number
      nickname?: string
      event?: string
    }): Promise<Invited[]> => said(client.invitations.create.mutate(of)),
    onSuccess,
  })
  const withdraw = useMutation({
    mutationFn: (invitation: string) => said(client.invitations.withdraw.mutate({ invitation })),
    onSuccess,
  })
  return { changeRole, end, erase, forget, revoke, rename, signOut, invite, withdraw }
}
