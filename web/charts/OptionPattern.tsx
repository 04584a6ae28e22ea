import { seriesColour } from './DotPlot.tsx'

/** A filling for each option that is told from the others without colour: bare, lines, dots, crosses. */
export function OptionPattern(props: { id: string; index: number }) {
  const { id, index } = props
  const colour = seriesColour(index)
  const kind = index % 4
  return (
    <pattern id={id} width="12" height="12" patternUnits="userSpaceOnUse">
      <rect width="12" height="12" style={{ fill: `color-mix(in srgb, ${colour} 16%, var(--sheet))` }} />
      {kind === 1 && (
        <path d="M-3 3L3 -3M0 12L12 0M9 15L15 9" fill="none" style={{ stroke: colour }} strokeWidth="1.5" />
      )}
      {kind === 2 && <path d="M3 3h.01M9 9h.01" style={{ stroke: colour }} strokeWidth="3" strokeLinecap="round" />}
      {kind === 3 && <path d="M6 3v6M3 6h6" style={{ stroke: colour }} strokeWidth="1.5" />}
    </pattern>
  )
}
