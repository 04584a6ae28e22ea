import { useEffect, useState } from 'react'
import { remember } from '../data/database.ts'
import { Choice } from '../parts/Choice.tsx'
import { buzz, hand, look, redWall } from '../parts/choices.ts'
import { Field } from '../parts/Field.tsx'
import { useKnown, useStanding } from '../parts/means.tsx'
import { Screen } from '../parts/Screen.tsx'
import { languageChoice, useWords } from '../words/catalogue.ts'
import { EventChoice } from './EventChoice.tsx'

/** What belongs to this phone and its owner's thumb. */
export function Settings() {
  const texts = useWords()
  const { settings } = texts
  const known = useKnown()
  const [other, setOther] = useState(false)
  return (
    <Screen title={settings.title}>
      {known && known.session?.claimed !== true && <Nickname nickname={known.nickname} />}
      <Choice
        label={settings.hand}
        value={hand.use()}
        choose={hand.choose}
        options={[
          { value: 'right', name: settings.rightHand },
          { value: 'left', name: settings.leftHand },
        ]}
      />
      <Choice
        label={texts.before.side}
        value={redWall.use()}
        choose={redWall.choose}
        options={(['left', 'right'] as const).map((value) => ({ value, name: texts.before[value] }))}
      />
      <Choice
        label={settings.look}
        value={look.use()}
        choose={look.choose}
        options={(['light', 'bright', 'dark'] as const).map((value) => ({ value, name: settings[value] }))}
      />
      <Choice
        label={settings.buzz}
        value={buzz.use()}
        choose={buzz.choose}
        options={(['on', 'off'] as const).map((value) => ({ value, name: settings[value] }))}
      />
      <Choice
        label={settings.language}
        value={languageChoice.use()}
        choose={languageChoice.choose}
        options={[
          { value: 'browser', name: settings.browser },
          { value: 'en', name: 'English' },
          { value: 'de', name: 'Deutsch' },
        ]}
      />
      {other ? (
        <EventChoice chosen={known?.event ?? undefined} done={() => setOther(false)} />
      ) : (
        <button type="button" onClick={() => setOther(true)}>
          {settings.otherEvent}
        </button>
      )}
      <Promised />
    </Screen>
  )
}

function Nickname({ nickname }: { nickname: string }) {
  const texts = useWords()
  const { database } = useStanding()
  const [typed, setTyped] = useState(nickname)
  return (
    <Field
      label={texts.settings.name}
      value={typed}
      maxLength={40}
      error={typed.trim() === '' ? texts.home.whoMissing : null}
      change={(name) => {
        setTyped(name)
        if (name.trim() !== '') void remember(database, 'nickname', name.trim())
      }}
    />
  )
}

/** Whether the browser has promised not to clear what is stored. */
function Promised() {
  const texts = useWords().settings
  const [kept, setKept] = useState<boolean>()
  useEffect(() => {
    navigator.storage?.persisted?.().then(setKept, () => setKept(false))
  }, [])
  return kept === undefined ? null : <p className="soft small">{kept ? texts.kept : texts.notKept}</p>
}
