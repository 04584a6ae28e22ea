import { type ComponentType, lazy, Suspense, useState } from 'react'
import type { Place } from '../../data/difference.ts'
import { Guard, Loading } from '../../shell/states.tsx'
import { words } from '../../words/catalogue.ts'

type Section = ComponentType<{ at: Place }>

let loaded: Section | null = null

async function load(): Promise<{ default: Section }> {
  const { default: section } = await import('./HardwareSection.tsx')
  loaded = section
  return { default: section }
}

/** Loads the section before a bar is chosen, so that the form does not move under a press. What fails is tried again when it is needed. */
export const preloadHardware = (): void => void load().catch(() => {})

const Lazy = lazy(load)

/** Where the time of a stage, or the drive's numbers, come from. `at`: in the robot. Loaded after the design's screen. */
export function Hardware(props: { at: Place }) {
  // As it was when the form opened: another kind of element would forget what is open in it.
  const [Ready] = useState(() => loaded)
  return (
    <Guard>
      {Ready ? (
        <Ready {...props} />
      ) : (
        <Suspense
          fallback={
            <div className="hardware-room">
              <Loading what={words().timings.what} />
            </div>
          }
        >
          <Lazy {...props} />
        </Suspense>
      )}
    </Guard>
  )
}
