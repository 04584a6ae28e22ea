import { Button, TextInput } from '@mantine/core'
import { useMemo } from 'react'
import { checkQuickSheet } from '../../../src/model/documents/checkQuickSheet.ts'
import type { QuickSheetRecord } from '../../../src/model/documents/quickSheet.ts'
import { strengthNames } from '../../../src/model/sheet/index.ts'
import type { Stored } from '../../data/documents.ts'
import type { Draft } from '../../data/draft.ts'
import { type Edit, EditProvider } from '../../shell/fields/EditContext.tsx'
import { useTexts } from '../../shell/fields/useTexts.ts'
import { Trouble } from '../../shell/states.tsx'
import { Terms } from '../../shell/Terms.tsx'
import { useUndoKeys } from '../../shell/useUndoKeys.ts'
import { words } from '../../words/catalogue.ts'
import type { SheetAsk } from '../../worker/protocol.ts'
import { ExportFile } from '../documents/ExportFile.tsx'
import { SaveBar } from '../documents/SaveBar.tsx'
import type { Editing } from '../documents/useEditing.ts'
import { Grow } from './Grow.tsx'
import { Ranking } from './Ranking.tsx'
import { Readings } from './Readings.tsx'
import { Rounds } from './Rounds.tsx'
import { Strengths } from './Strengths.tsx'
import { useReadings } from './useReadings.ts'
import { useSheet } from './useSheet.ts'
import { WaysTable } from './WaysTable.tsx'
import './quickSheet.css'

export function QuickSheetEditor(props: {
  stored: Stored<'quickSheet'>
  draft: Draft<QuickSheetRecord>
  game: Stored<'game'>
  /** A newer revision of the game with other rules, if there is one. */
  newest: number | null
  old: boolean
}) {
  const { stored, draft, old } = props
  const game = props.game.body
  const sheet = draft.value
  const { texts: typed, setText, clear, unread } = useTexts()
  const problems = useMemo(() => checkQuickSheet(game, sheet), [game, sheet])
  const readings = useReadings(sheet.game)
  const ask = useMemo(
    (): SheetAsk | null =>
      sheet.ways.length === 0
        ? null
        : {
            games: [game, ...readings.map((reading) => reading.game)],
            ways: sheet.ways,
            strengths: strengthNames.map((name) => sheet.strengths[name]),
          },
    [game, readings, sheet.ways, sheet.strengths],
  )
  const { results, error } = useSheet(ask)
  const stale = ask !== null && results?.asked !== ask
  // Rows may have been added or removed since: an answer belongs to the way with its id.
  const answersOf = (of: number, strength: number) =>
    sheet.ways.map((way) => {
      const index = results?.asked.ways.findIndex(({ id }) => id === way.id) ?? -1
      return results?.answers[of]?.[strength]?.[index]
    })
  const complete = (of: number, strength: number) =>
    answersOf(of, strength).map((answer) => answer ?? { problem: { message: '' } })
  const undo = () => {
    clear()
    draft.undo()
  }
  const redo = () => {
    clear()
    draft.redo()
  }
  useUndoKeys({ undo, redo, on: !old })
  const edit: Edit = {
    document: sheet,
    set: draft.set,
    pause: draft.pause,
    problems,
    texts: typed,
    setText,
    readOnly: old,
  }
  const editing: Editing<'quickSheet'> = {
    kind: 'quickSheet',
    stored,
    draft,
    old,
    unread,
    undo,
    redo,
    fields: () => edit,
  }
  const texts = words().quickSheet
  return (
    <EditProvider value={edit}>
      <div className="stack wide">
        <div className="row spread">
          <div>
            <p className="label">
              {texts.one} · {game.name}
            </p>
            <h1>{sheet.name || texts.nameless}</h1>
          </div>
          <SaveBar of={editing} href="/quick-sheet" />
        </div>
        <Terms of={['leg', 'load', 'finish', 'strength', 'reading', 'round', 'expectedPoints']} />
        {props.newest !== null && (
          <div className="row">
            <p>{texts.newer(props.newest)}</p>
            <Button variant="default" disabled={old} onClick={() => draft.set(['game', 'revision'], props.newest)}>
              {texts.takeNewest}
            </Button>
          </div>
        )}
        <WaysTable game={game} sheet={sheet} revision={sheet.game.revision} answers={answersOf(0, 1)} stale={stale} />
        {error && <Trouble title={texts.ranking.title} error={error} />}
        <Ranking
          game={game}
          sheet={sheet}
          stale={stale}
          answers={results && { weak: complete(0, 0), middling: complete(0, 1), strong: complete(0, 2) }}
        />
        <Strengths />
        <Rounds sheet={sheet} saved={stored.id} dirty={draft.dirty || unread.length > 0} />
        <Readings
          game={game}
          sheet={sheet}
          readings={readings}
          base={complete(0, 1)}
          answers={results ? readings.map((_, index) => complete(index + 1, 1)) : null}
        />
        <Grow game={game} sheet={sheet} revision={sheet.game.revision} faulty={problems.length + unread.length > 0} />
        <div className="row no-print" style={{ alignItems: 'end' }}>
          <TextInput
            label={texts.sheetName}
            value={sheet.name}
            readOnly={old}
            error={sheet.name.trim() === '' ? texts.nameNeeded : null}
            onChange={(event) => draft.set(['name'], event.currentTarget.value, 'name')}
            onBlur={draft.pause}
          />
          <ExportFile name={sheet.name} body={sheet} />
        </div>
      </div>
    </EditProvider>
  )
}
