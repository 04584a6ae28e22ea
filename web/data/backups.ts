import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query'
import { client, said } from './api.ts'

const key = ['backups']

/** Copies of the server's database, newest first; for leads. */
export const useBackups = () => useQuery({ queryKey: key, queryFn: () => said(client.backups.list.query({})) })

export type Backup = NonNullable<NonNullable<ReturnType<typeof useBackups>['data']>>[number]

export function useBackupWork() {
  const queries = useQueryClient()
  const onSettled = () => queries.invalidateQueries({ queryKey: key })
  const make = useMutation({ mutationFn: () => said(client.backups.make.mutate({})), onSettled })
  const prove = useMutation({ mutationFn: (name: string) => said(client.backups.prove.mutate({ name })), onSettled })
  return { make, prove }
}
