import { lazy, Suspense, useEffect } from 'react'
import { Route, Switch, useLocation } from 'wouter'
import { StartScreen } from './screens/start/StartScreen.tsx'
import { Masthead } from './shell/Masthead.tsx'
import { Guard, Loading } from './shell/states.tsx'
import { words } from './words/catalogue.ts'

const DesignsScreen = lazy(() => import('./screens/designs/DesignsScreen.tsx'))
const DesignScreen = lazy(() => import('./screens/designs/DesignScreen.tsx'))
const StopwatchScreen = lazy(() => import('./screens/designs/stopwatch/StopwatchScreen.tsx'))
const TradeOffsScreen = lazy(() => import('./screens/tradeoffs/TradeOffsScreen.tsx'))
const TradeOffScreen = lazy(() => import('./screens/tradeoffs/TradeOffScreen.tsx'))
const DecisionsScreen = lazy(() => import('./screens/decisions/DecisionsScreen.tsx'))
const DecisionScreen = lazy(() => import('./screens/decisions/DecisionScreen.tsx'))
const GamesScreen = lazy(() => import('./screens/games/GamesScreen.tsx'))
const GameScreen = lazy(() => import('./screens/games/GameScreen.tsx'))
const RulesChangeScreen = lazy(() => import('./screens/rulesChange/RulesChangeScreen.tsx'))
const QuickSheetsScreen = lazy(() => import('./screens/quickSheet/QuickSheetsScreen.tsx'))
const QuickSheetScreen = lazy(() => import('./screens/quickSheet/QuickSheetScreen.tsx'))
const GuessScreen = lazy(() => import('./screens/guess/GuessScreen.tsx'))

/** A new screen begins at its top, where a screen reader and the keyboard begin too. */
function useTop(location: string) {
  // biome-ignore lint/correctness/useExhaustiveDependencies: the location is what it follows
  useEffect(() => {
    window.scrollTo(0, 0)
  }, [location])
}

export function App() {
  const [location] = useLocation()
  useTop(location)
  return (
    <>
      <Masthead />
      <main id="main" tabIndex={-1} style={{ outline: 'none' }}>
        <Guard key={location}>
          <Suspense fallback={<Loading what="the screen" />}>
            <Switch>
              <Route path="/" component={StartScreen} />
              <Route path="/games" component={GamesScreen} />
              <Route path="/games/:id">{({ id }) => <GameScreen key={id} id={id} />}</Route>
              <Route path="/games/:id/consequences">{({ id }) => <RulesChangeScreen key={id} id={id} />}</Route>
              <Route path="/quick-sheet" component={QuickSheetsScreen} />
              <Route path="/quick-sheet/:id">{({ id }) => <QuickSheetScreen key={id} id={id} />}</Route>
              <Route path="/guess">
                <GuessScreen />
              </Route>
              <Route path="/guess/:code">{({ code }) => <GuessScreen key={code} code={code} />}</Route>
              <Route path="/designs" component={DesignsScreen} />
              <Route path="/designs/:id">{({ id }) => <DesignScreen key={id} id={id} />}</Route>
              <Route path="/designs/:id/stopwatch">{({ id }) => <StopwatchScreen key={id} id={id} />}</Route>
              <Route path="/trade-offs" component={TradeOffsScreen} />
              <Route path="/trade-offs/:id">{({ id }) => <TradeOffScreen key={id} id={id} />}</Route>
              <Route path="/decisions" component={DecisionsScreen} />
              <Route path="/decisions/:id">{({ id }) => <DecisionScreen key={id} id={id} />}</Route>
              <Route>
                <h1>{words().shell.noScreen}</h1>
              </Route>
            </Switch>
          </Suspense>
        </Guard>
      </main>
      <footer className="colophon">{words().shell.colophon}</footer>
    </>
  )
}
