import { useQuery } from '@tanstack/react-query'
import { standsPack } from '../../data/records.ts'

/** An event with its game, schedule and people, as phones get it. */
export const useStandsPack = (event: string) =>
  useQuery({ queryKey: ['standsPack', event], queryFn: () => standsPack(event), refetchOnWindowFocus: true })
