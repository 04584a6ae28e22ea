import { useEdit } from './EditContext.tsx'

/** A text that somebody wrote into the document, marked with its language where that is known: for those who hear it. */
export function OwnText(props: { text: string }) {
  return <span lang={useEdit().language?.(props.text)}>{props.text}</span>
}
