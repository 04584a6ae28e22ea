import { useNamed, usePeople } from '../../data/people.ts'
import type { EventPage } from './EventFrame.tsx'
import { nameOfPerson } from './matchNames.ts'

/** What people are called whose ids stand in records: members, who was one (for leads), and who came with files. */
export function usePeopleNames({ watching, lead }: Pick<EventPage, 'watching' | 'lead'>): (id: string) => string {
  const people = usePeople(lead).data ?? []
  const named = useNamed().data ?? []
  return (id) => nameOfPerson({ people: [...watching.people, ...people], named }, id)
}
