import '@fontsource-variable/source-sans-3/wght.css'
import '../theme/colours.css'
import './stands.css'
import { StrictMode } from 'react'
import { createRoot } from 'react-dom/client'
import { App } from './app.tsx'
import { openDatabase } from './data/database.ts'
import { standingOf } from './data/standing.ts'
import { Broken } from './parts/Broken.tsx'
import { followLook } from './parts/choices.ts'
import { StandingIn } from './parts/means.tsx'
import { keepPage } from './parts/useKept.ts'
import { Refused } from './screens/Refused.tsx'
import { language, languageChoice } from './words/catalogue.ts'

const speak = () => {
  document.documentElement.lang = language()
}

followLook()
speak()
languageChoice.subscribe(speak)

const root = createRoot(document.getElementById('root')!)
const database = openDatabase()
try {
  await database.open()
  // Asked for without waiting: some browsers ask their user.
  navigator.storage?.persist?.().catch(() => false)
  const standing = standingOf(database)
  root.render(
    <StrictMode>
      <StandingIn value={standing}>
        <Broken>
          <App />
        </Broken>
      </StandingIn>
    </StrictMode>,
  )
} catch {
  root.render(<Refused />)
}
void keepPage()
