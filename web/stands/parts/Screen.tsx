import { type ReactNode, useEffect, useRef } from 'react'
import { useWords } from '../words/catalogue.ts'
import { linkTo } from './place.ts'
import { StatusBar } from './StatusBar.tsx'

/** A screen with its heading, which is told to whoever comes to it, and the way back. */
export function Screen(props: { title: string; home?: boolean; children?: ReactNode }) {
  const texts = useWords().app
  const heading = useRef<HTMLHeadingElement>(null)
  useEffect(() => {
    document.title = `${props.title} · Cyclewright`
    heading.current?.focus({ preventScroll: true })
    scrollTo(0, 0)
  }, [props.title])
  return (
    <>
      <header className="top">
        {!props.home && (
          <a className="back" href={linkTo({ screen: 'home' })} aria-label={texts.back}>
            ‹
          </a>
        )}
        <StatusBar />
      </header>
      <main className="page">
        <h1 ref={heading} tabIndex={-1}>
          {props.title}
        </h1>
        {props.children}
      </main>
    </>
  )
}
