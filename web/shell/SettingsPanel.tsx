import { useState } from 'react'
import { Link } from 'wouter'
import { useSession } from '../data/session.ts'
import { contrastChoice, schemeChoice } from '../theme/scheme.ts'
import { chooseUnits, useUnits } from '../units/system.ts'
import { languageNames, languageSpoken, words } from '../words/catalogue.ts'
import { chooseLanguageHere, useLanguageChoice } from '../words/language.ts'
import { Panel } from './Panel.tsx'
import { ShortcutList } from './ShortcutList.tsx'

/** A choice among few, by its names. */
function Choice<T extends string>(props: {
  label: string
  value: T
  choices: { readonly [value in T]: string }
  onChoose(value: T): void
  /** The language of each name, where they are in their own. */
  own?: boolean
}) {
  const values = Object.keys(props.choices) as T[]
  return (
    <label className="setting">
      <span>{props.label}</span>
      <select value={props.value} onChange={(event) => props.onChoose(event.currentTarget.value as T)}>
        {values.map((value) => (
          <option key={value} value={value} lang={props.own && value !== 'browser' ? value : undefined}>
            {props.choices[value]}
          </option>
        ))}
      </select>
    </label>
  )
}

function LanguageChoice() {
  const texts = words().settings
  const choice = useLanguageChoice()
  const spoken = languageNames.find(({ language }) => language === languageSpoken())!
  const browser = choice === 'browser' ? texts.asBrowser(spoken.name) : texts.followBrowser
  return (
    <Choice
      label={texts.language}
      value={choice}
      choices={{
        browser,
        ...(Object.fromEntries(languageNames.map(({ language, name }) => [language, name])) as {
          en: string
          de: string
        }),
      }}
      own
      onChoose={chooseLanguageHere}
    />
  )
}

/** Who is signed in here, and the way to the people. */
function WhoAndPeople(props: { onGo(): void }) {
  const texts = words().people
  const { data } = useSession()
  return (
    <>
      {data?.person && <p>{texts.signedIn(data.person.nickname)}</p>}
      <p>
        <Link href="/people" onClick={props.onGo}>
          {texts.title}
        </Link>
      </p>
    </>
  )
}

/** How this device shows things, and where help is. */
export default function SettingsPanel(props: { onClose(): void }) {
  const texts = words().settings
  const [listed, setListed] = useState(false)
  return (
    <Panel title={words().shell.settings} open onClose={props.onClose} side>
      <div className="stack">
        <Choice label={words().units.label} value={useUnits()} choices={words().units.systems} onChoose={chooseUnits} />
        <LanguageChoice />
        <Choice
          label={texts.scheme}
          value={schemeChoice.use()}
          choices={texts.schemes}
          onChoose={schemeChoice.choose}
        />
        <Choice
          label={texts.contrast}
          value={contrastChoice.use()}
          choices={texts.contrasts}
          onChoose={contrastChoice.choose}
        />
      </div>
      <p className="soft small">{texts.kept}</p>
      <h3>{words().people.title}</h3>
      <WhoAndPeople onGo={props.onClose} />
      <h3>{words().shell.help}</h3>
      <p>
        <Link href="/help" onClick={props.onClose}>
          {texts.helpPage}
        </Link>
      </p>
      <details open={listed} onToggle={(event) => setListed(event.currentTarget.open)}>
        <summary>{texts.shortcuts}</summary>
        {listed && <ShortcutList />}
      </details>
    </Panel>
  )
}
