import { expect, test } from 'vitest'
import { sources } from '../house/sources.ts'

test('each screen of the design weeks says what its words mean where they stand', () => {
  const screens = [
    'start/StartScreen.tsx',
    'games/GameForms.tsx',
    'rulesChange/RulesChangeScreen.tsx',
    'quickSheet/QuickSheetEditor.tsx',
    'designs/DesignEditor.tsx',
    'tradeoffs/TradeOff.tsx',
    'decisions/DecisionScreen.tsx',
    'match/MatchDesk.tsx',
  ]
  const explaining = sources('web/screens').filter(({ text }) => /<Terms?\s/.test(text))
  expect(screens.filter((screen) => !explaining.some(({ path }) => path.endsWith(screen)))).toEqual([])
})
