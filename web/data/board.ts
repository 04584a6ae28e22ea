import { client, said } from './api.ts'

type Lead = typeof client.lead

/** What leads ask and do while records come in. */
export const api = {
  board: (event: string) => said(client.lead.board.query({ event })),
  quarantine: (event: string) => said(client.lead.quarantine.query({ event })),
  observations: (event: string, match: string | null) =>
    said(client.lead.observations.query({ event, ...(match === null ? {} : { match }) })),
  correct: (of: Parameters<Lead['correct']['mutate']>[0]) => said(client.lead.correct.mutate(of)),
  choices: (event: string) => said(client.lead.choices.query({ event })),
  choose: (of: Parameters<Lead['choose']['mutate']>[0]) => said(client.lead.choose.mutate(of)),
  resolve: (of: Parameters<Lead['resolve']['mutate']>[0]) => said(client.lead.resolve.mutate(of)),
  swap: (of: Parameters<Lead['swap']['mutate']>[0]) => said(client.lead.swap.mutate(of)),
  startDrill: (event: string) => said(client.lead.startDrill.mutate({ event })),
  endDrill: (event: string, drill: string) => said(client.lead.endDrill.mutate({ event, drill })),
}
