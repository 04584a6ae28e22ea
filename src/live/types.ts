export const liveKinds = [
  /** The event's own document: its teams, its name, how soon matches are forgotten. */
  'event',
  'records',
  'schedule',
  'results',
  'assignments',
  'people',
  'devices',
  'quarantine',
  'drill',
  'forecasts',
  'selection',
] as const

/** What changed in an event, so that screens ask for it anew. It carries no content: who may read what is decided where it is read. */
export interface LiveNews {
  /** Null: of no event alone, told to whoever looks at any. */
  event: string | null
  what: (typeof liveKinds)[number]
}

/** Tells those who look at a workspace what changed. Others may offer the same across processes. */
export interface Live {
  publish(workspace: string, news: LiveNews): void
  /** Returns how to stop listening. */
  hear(workspace: string, heard: (news: LiveNews) => void): () => void
}
