import { lazy, Suspense } from 'react'
import type { Place } from '../../data/difference.ts'
import { Guard, Loading } from '../../shell/states.tsx'
import { words } from '../../words/catalogue.ts'

// Loaded when a bar is chosen or a timing is opened: the design's screen is there before.
const Section = lazy(() => import('./HardwareSection.tsx'))

/** Where the time of a stage, or the drive's numbers, come from. `at`: in the robot. */
export function Hardware(props: { at: Place }) {
  return (
    <Guard>
      <Suspense fallback={<Loading what={words().timings.what} />}>
        <Section {...props} />
      </Suspense>
    </Guard>
  )
}
