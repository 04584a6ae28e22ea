import { Suspense, useCallback, useEffect, useState } from 'react'
import { Link, Route, Switch, useLocation } from 'wouter'
import { useSignInAsked } from './data/signIn.ts'
import { StartScreen } from './screens/start/StartScreen.tsx'
import { Masthead } from './shell/Masthead.tsx'
import { useTitle } from './shell/places.ts'
import { screen } from './shell/screen.ts'
import { Guard, Loading } from './shell/states.tsx'
import { useShortcuts } from './shell/useShortcuts.ts'
import { useUnits } from './units/system.ts'
import { words } from './words/catalogue.ts'
import { useLanguage } from './words/language.ts'

const DesignsScreen = screen(() => import('./screens/designs/DesignsScreen.tsx'))
const DesignScreen = screen(() => import('./screens/designs/DesignScreen.tsx'))
const StopwatchScreen = screen(() => import('./screens/designs/stopwatch/StopwatchScreen.tsx'))
const TradeOffsScreen = screen(() => import('./screens/tradeoffs/TradeOffsScreen.tsx'))
const TradeOffScreen = screen(() => import('./screens/tradeoffs/TradeOffScreen.tsx'))
const DecisionsScreen = screen(() => import('./screens/decisions/DecisionsScreen.tsx'))
const DecisionScreen = screen(() => import('./screens/decisions/DecisionScreen.tsx'))
const GamesScreen = screen(() => import('./screens/games/GamesScreen.tsx'))
const GameScreen = screen(() => import('./screens/games/GameScreen.tsx'))
const RulesChangeScreen = screen(() => import('./screens/rulesChange/RulesChangeScreen.tsx'))
const QuickSheetsScreen = screen(() => import('./screens/quickSheet/QuickSheetsScreen.tsx'))
const QuickSheetScreen = screen(() => import('./screens/quickSheet/QuickSheetScreen.tsx'))
const HelpScreen = screen(() => import('./screens/help/HelpScreen.tsx'))
const PartsScreen = screen(() => import('./screens/parts/PartsScreen.tsx'))
const MatchScreen = screen(() => import('./screens/match/MatchScreen.tsx'))
const HandInScreen = screen(() => import('./screens/event/handin/HandInScreen.tsx'))
const SheetsScreen = screen(() => import('./screens/event/sheets/SheetsScreen.tsx'))
const CodesScreen = screen(() => import('./screens/event/codes/CodesScreen.tsx'))
const BoardScreen = screen(() => import('./screens/event/board/BoardScreen.tsx'))
const VisitsScreen = screen(() => import('./screens/event/visits/VisitsScreen.tsx'))
const BriefingScreen = screen(() => import('./screens/event/briefing/BriefingScreen.tsx'))
const PitScreen = screen(() => import('./screens/event/pit/PitScreen.tsx'))
const PicksScreen = screen(() => import('./screens/event/picks/PicksScreen.tsx'))
const PlayoffsScreen = screen(() => import('./screens/event/playoffs/PlayoffsScreen.tsx'))
const EventsScreen = screen(() => import('./screens/event/EventsScreen.tsx'))
const ShortcutPanel = screen(() => import('./shell/ShortcutPanel.tsx'))
const PeopleScreen = screen(() => import('./screens/people/PeopleScreen.tsx'))
const SignInPanel = screen(() => import('./screens/people/SignInPanel.tsx'))
const GuessScreen = screen(() => import('./screens/guess/GuessScreen.tsx'))

/** A new screen begins at its top, where a screen reader and the keyboard begin too. */
function useTop(location: string) {
  // biome-ignore lint/correctness/useExhaustiveDependencies: the location is what it follows
  useEffect(() => {
    window.scrollTo(0, 0)
  }, [location])
}

function NoScreen() {
  const texts = words().shell
  return (
    <div className="stack">
      <h1>{texts.noScreen}</h1>
      <p>
        <Link href="/">{texts.toStart}</Link>
      </p>
    </div>
  )
}

export function App() {
  const [location] = useLocation()
  useTop(location)
  // Sentences are made outside of components: another language or other units draw everything anew.
  useLanguage()
  useUnits()
  useTitle(location)
  const [listed, setListed] = useState(false)
  useShortcuts({ onList: useCallback(() => setListed(true), []) })
  const signInAsked = useSignInAsked()
  return (
    <>
      <Masthead />
      <main id="main" tabIndex={-1} style={{ outline: 'none' }}>
        <Guard key={location}>
          <Suspense fallback={<Loading what={words().shell.theScreen} />}>
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
              <Route path="/match/:game?">{({ game }) => <MatchScreen key={game ?? ''} game={game} />}</Route>
              <Route path="/parts/:id?">{({ id }) => <PartsScreen key={id ?? ''} id={id} />}</Route>
              <Route path="/event/:id/hand-in">{({ id }) => <HandInScreen key={id} id={id} />}</Route>
              <Route path="/event/:id/sheets">{({ id }) => <SheetsScreen key={id} id={id} />}</Route>
              <Route path="/event/:id/codes">{({ id }) => <CodesScreen key={id} id={id} />}</Route>
              <Route path="/event/:id/board">{({ id }) => <BoardScreen key={id} id={id} />}</Route>
              <Route path="/event/:id/visits">{({ id }) => <VisitsScreen key={id} id={id} />}</Route>
              <Route path="/event/:id/briefing">{({ id }) => <BriefingScreen key={id} id={id} />}</Route>
              <Route path="/event/:id/pit">{({ id }) => <PitScreen key={id} id={id} />}</Route>
              <Route path="/event/:id/picks">{({ id }) => <PicksScreen key={id} id={id} />}</Route>
              <Route path="/event/:id/playoffs">{({ id }) => <PlayoffsScreen key={id} id={id} />}</Route>
              <Route path={/^\/(people|claim|join|sign-in)\/?$/}>
                <PeopleScreen />
              </Route>
              <Route path="/event/:id?/:part?">
                {({ id, part }) => <EventsScreen key={id ?? ''} id={id} part={part} />}
              </Route>
              <Route path="/help" component={HelpScreen} />
              <Route component={NoScreen} />
            </Switch>
          </Suspense>
        </Guard>
      </main>
      {signInAsked && location !== '/sign-in' && (
        <Suspense>
          <SignInPanel />
        </Suspense>
      )}
      {listed && (
        <Suspense>
          <ShortcutPanel onClose={() => setListed(false)} />
        </Suspense>
      )}
      <footer className="colophon">
        {location.startsWith('/event/') ? words().shell.colophonOfEvent : words().shell.colophon}
      </footer>
    </>
  )
}
