import { useQuery } from '@tanstack/react-query'
import type { AfterReport, PublishedEvent } from '../../src/model/event/after/index.ts'
import { client, said } from './api.ts'

export interface After {
  design: { id: string; name: string; revision: number } | null
  designs: { id: string; name: string }[]
  copies: { id: string; name: string; shifts: number }[]
  report: AfterReport
}

interface Asked {
  event: string
  team: string
  /** Null: that of the newest decision. */
  design: string | null
}

const question = ({ event, team, design }: Asked) => ({ event, team, ...(design !== null && { design }) })

/** Under the estimates, since it is asked for anew with them. */
export const useAfter = (of: Asked) =>
  useQuery({
    queryKey: ['event', of.event, 'estimates', 'after', of.team, of.design],
    queryFn: () => said(client.after.event.query(question(of))) as unknown as Promise<After>,
  })

export const usePublished = (of: Asked) =>
  useQuery({
    queryKey: ['event', of.event, 'estimates', 'published', of.team, of.design],
    queryFn: () => said(client.after.published.query(question(of))) as unknown as Promise<PublishedEvent>,
  })
