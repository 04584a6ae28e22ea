import { usePlace } from './parts/place.ts'
import { Choose } from './screens/Choose.tsx'
import { DraftScreen } from './screens/DraftScreen.tsx'
import { Home } from './screens/Home.tsx'
import { Practice } from './screens/Practice.tsx'
import { Records } from './screens/Records.tsx'
import { Settings } from './screens/Settings.tsx'

/** The screen that the address names. */
export function App() {
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
    default:
      return <Home />
  }
}
