import { lazy, Suspense } from 'react'
import { usePlace } from './parts/place.ts'
import { Unkept } from './parts/Unkept.tsx'
import { Choose } from './screens/Choose.tsx'
import { DraftScreen } from './screens/DraftScreen.tsx'
import { Home } from './screens/Home.tsx'
import { Practice } from './screens/Practice.tsx'
import { Records } from './screens/Records.tsx'
import { Settings } from './screens/Settings.tsx'

const ReadCodes = lazy(() => import('./codes/ReadCodes.tsx'))
const ShowCodes = lazy(() => import('./codes/ShowCodes.tsx'))
const Visit = lazy(() => import('./pit/Visit.tsx'))
const Rank = lazy(() => import('./pit/Rank.tsx'))
const Training = lazy(() => import('./training/Training.tsx'))
const ChangeMark = lazy(() => import('./pit/ChangeMark.tsx'))

/** What is seldom opened is loaded when it is, and kept for when there is no connection. */
function Seldom({ screen }: { screen: string }) {
  switch (screen) {
    case 'read':
      return <ReadCodes />
    case 'show':
      return <ShowCodes />
    case 'visit':
      return <Visit />
    case 'rank':
      return <Rank />
    case 'training':
      return <Training />
    default:
      return <ChangeMark />
  }
}

export function App() {
  return (
    <>
      <Place />
      <Unkept />
    </>
  )
}

/** The screen that the address names. */
function Place() {
  const place = usePlace()
  switch (place.screen) {
    case 'choose':
      return <Choose />
    case 'practice':
      return <Practice />
    case 'records':
      return <Records />
    case 'settings':
      return <Settings />
    case 'draft':
      return <DraftScreen key={place.id} id={place.id} />
    case 'read':
    case 'show':
    case 'visit':
    case 'rank':
    case 'training':
    case 'change':
      return (
        <Suspense>
          <Seldom key={place.screen} screen={place.screen} />
        </Suspense>
      )
    default:
      return <Home />
  }
}
