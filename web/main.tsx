import '@fontsource-variable/source-sans-3/wght.css'
import '@fontsource-variable/source-serif-4/wght.css'
import './theme/mantine.ts'
import './theme/colours.css'
import './theme/base.css'
import './theme/print.css'
import { MantineProvider } from '@mantine/core'
import { QueryClient, QueryClientProvider } from '@tanstack/react-query'
import { type ReactNode, StrictMode } from 'react'
import { createRoot } from 'react-dom/client'
import { App } from './app.tsx'
import { theme, variables } from './theme/mantine.ts'
import { followTheme, useSchemeShown } from './theme/scheme.ts'
import { followLanguage } from './words/language.ts'
import { readyPicks } from './worker/client.ts'

const queries = new QueryClient({
  defaultOptions: {
    queries: { retry: 1, networkMode: 'always', refetchOnWindowFocus: false },
    mutations: { networkMode: 'always', retry: 0 },
  },
})

/** The widgets in the scheme shown. */
function Themed(props: { children: ReactNode }) {
  return (
    <MantineProvider theme={theme} cssVariablesResolver={variables} forceColorScheme={useSchemeShown()}>
      {props.children}
    </MantineProvider>
  )
}

// Picks are waited for with names being called: their worker begins while this page is still being made.
const picks = /^\/event\/([^/]+)\/(?:picks|playoffs)$/.exec(location.pathname)?.[1]
if (picks !== undefined) readyPicks(decodeURIComponent(picks))
followTheme()
await followLanguage()

createRoot(document.getElementById('root')!).render(
  <StrictMode>
    <Themed>
      <QueryClientProvider client={queries}>
        <App />
      </QueryClientProvider>
    </Themed>
  </StrictMode>,
)
