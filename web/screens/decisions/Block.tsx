import type { ReactNode } from 'react'
import { OwnText } from '../../shell/fields/OwnText.tsx'

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
          <li key={line}>
            <OwnText text={line} />
          </li>
        ))}
      </ul>
    </Block>
  )
}
