import { TextInput } from '@mantine/core'
import { useEffect, useState } from 'react'
import { locale, words } from '../../words/catalogue.ts'
import type { GlossaryWord } from '../../words/glossary.ts'

/** The place that the address asks for is drawn later than the browser looks for it. */
function useAnchor(): void {
  useEffect(() => {
    const id = decodeURIComponent(location.hash.slice(1))
    if (id !== '') document.getElementById(id)?.scrollIntoView()
  }, [])
}

/** Every word of the trade and of this program, in the order of the alphabet, and those in which something typed stands. */
export function Glossary() {
  const [typed, setTyped] = useState('')
  const texts = words().help
  useAnchor()
  const all = Object.entries(words().glossary) as [GlossaryWord, { word: string; means: string }][]
  const sought = typed.trim().toLocaleLowerCase(locale())
  const shown = all
    .filter(([, { word, means }]) => `${word} ${means}`.toLocaleLowerCase(locale()).includes(sought))
    .sort(([, a], [, b]) => a.word.localeCompare(b.word, locale()))
  return (
    <section className="stack" aria-labelledby="words">
      <h2 id="words">{texts.words}</h2>
      <TextInput
        className="find"
        type="search"
        label={texts.find}
        value={typed}
        onChange={(event) => setTyped(event.currentTarget.value)}
      />
      <p role="status" className={shown.length === 0 ? undefined : 'visually-hidden'}>
        {shown.length === 0 && texts.noWord(typed.trim())}
      </p>
      <dl className="glossary">
        {shown.map(([id, { word, means }]) => (
          <div key={id} id={id}>
            <dt>{word}</dt>
            <dd>{means}</dd>
          </div>
        ))}
      </dl>
    </section>
  )
}
