import { useQuery } from '@tanstack/react-query'
import type { StandsPack } from '../../codes/standsPack.ts'
import { useNamed } from '../../data/people.ts'
import { standsPack } from '../../data/records.ts'
import type { People } from './matchNames.ts'

/** An event with its game, schedule and people, as phones get it. */
export const useStandsPack = (event: string) =>
  useQuery({ queryKey: ['standsPack', event], queryFn: () => standsPack(event), refetchOnWindowFocus: true })

/** The same with the names of those who came with files, which phones do not get. */
export type NamedPack = StandsPack & { named: People }

export function useNamedPack(event: string) {
  const { data, error, refetch } = useStandsPack(event)
  const named = useNamed()
  return { data: data && !named.isPending ? { ...data, named: named.data ?? [] } : undefined, error, refetch }
}
