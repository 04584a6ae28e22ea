import { useLayoutEffect } from 'react'
import { words } from '../words/catalogue.ts'
import type { GlossaryWord } from '../words/glossary.ts'

/** What a word of the glossary means; `onShown` when there is something to see. */
export default function Meaning(props: { word: GlossaryWord; onShown(): void }) {
  const { word, means } = words().glossary[props.word]
  const { onShown } = props
  useLayoutEffect(onShown, [onShown])
  return (
    <>
      <strong>{word}</strong>: {means}.
    </>
  )
}
