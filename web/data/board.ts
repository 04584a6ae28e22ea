import { client, said } from './api.ts'

type Lead = typeof client.lead

/** What leads ask and do while records come in. */
export const api = {
  board: (event: string) => said(client.lead.board.query({ event })),
  quarantine: (event: string) => said(client.lead.quarantine.query({ event })),
  resolve: (of: Parameters<Lead['resolve']['mutate']>[0]) => said(client.lead.resolve.mutate(of)),
  swap: (of: Parameters<Lead['swap']['mutate']>[0]) => said(client.lead.swap.mutate(of)),
  startDrill: (event: string) => said(client.lead.startDrill.mutate({ event })),
  endDrill: (event: string, drill: string) => said(client.lead.endDrill.mutate({ event, drill })),
}
