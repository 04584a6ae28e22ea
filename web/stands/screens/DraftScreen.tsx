import { useEffect } from 'react'
import { useKnown } from '../parts/means.tsx'
import { goInstead } from '../parts/place.ts'
import { aboutName } from '../record/names.ts'
import { useDraft } from '../record/useDraft.ts'
import { Before } from './draft/Before.tsx'
import { Check } from './draft/Check.tsx'
import { Running } from './draft/Running.tsx'

/** One record, from before the match to the check at its end. It lives in the phone's database, so that it goes on after a crash. */
export function DraftScreen({ id }: { id: string }) {
  const desk = useDraft(id)
  const known = useKnown()
  const step = desk?.draft.step
  useEffect(() => {
    if (desk === null || step === 'saved') goInstead({ screen: 'home' })
  }, [desk, step])
  if (!desk || !known) return null
  const title = aboutName(desk.draft.about, known.pack?.pack.matches ?? [])
  switch (step) {
    case 'before':
      return <Before desk={desk} title={title} />
    case 'running':
      return <Running desk={desk} title={title} />
    case 'check':
      return <Check desk={desk} title={title} />
    default:
      return null
  }
}
