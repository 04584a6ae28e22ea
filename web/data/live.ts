import { useQueryClient } from '@tanstack/react-query'
import { useEffect } from 'react'

/** What is asked for anew when something of an event changed. */
const concerned: { readonly [what: string]: readonly string[] } = {
  // Not the document itself: somebody may be typing into a form that began from it.
  event: ['pack', 'estimates', 'doubts', 'board', 'ranking'],
  schedule: ['pack', 'schedule', 'ranking', 'assignments', 'board', 'estimates', 'forecasts'],
  results: ['pack', 'results', 'ranking', 'schedule', 'board', 'doubts', 'estimates', 'forecasts'],
  assignments: ['assignments', 'board'],
  records: ['pack', 'records', 'board', 'estimates', 'doubts'],
  quarantine: ['quarantine', 'board'],
  forecasts: ['forecasts'],
  selection: ['selection'],
  devices: ['devices', 'board'],
}

/** Of people, who are of no event alone: what is asked for anew by its own name, and who this is first of all. */
const ofPeople = ['session', 'people', 'devices']

/**
 * Follows an event while a screen shows it: what changes on the server is asked for anew. The browser itself takes the stream up again
 * after a break; what happened meanwhile is asked for then.
 */
export function useLive(event: string): void {
  const queries = useQueryClient()
  useEffect(() => {
    const stream = new EventSource(`/api/events/${encodeURIComponent(event)}/live`)
    const forget = (key: string) => void queries.invalidateQueries({ queryKey: [key] })
    const anew = (what: string) => void queries.invalidateQueries({ queryKey: ['event', event, what] })
    let broken = false
    stream.addEventListener('open', () => {
      if (broken) void queries.invalidateQueries({ queryKey: ['event', event] })
      broken = false
    })
    stream.addEventListener('error', () => {
      broken = true
      // The browser does not try again: who asks may not any more.
      if (stream.readyState === EventSource.CLOSED) ofPeople.forEach(forget)
    })
    stream.addEventListener('people', () => {
      ofPeople.forEach(forget)
      anew('assignments')
    })
    for (const [what, parts] of Object.entries(concerned)) stream.addEventListener(what, () => parts.forEach(anew))
    return () => stream.close()
  }, [event, queries])
}
