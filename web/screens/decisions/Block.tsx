import type { ReactNode } from 'react'

/** A part of the record that stands whole on one page. */
export function Block(props: { title: string; children: ReactNode }) {
  return (
    <section className="whole">
      <h2>{props.title}</h2>
      {props.children}
    </section>
  )
}

export function Lines(props: { title: string; lines: string[] }) {
  if (props.lines.length === 0) return null
  return (
    <Block title={props.title}>
      <ul>
        {props.lines.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </Block>
  )
}
