/** Diagonal lines for float and for what is uncertain: legible without colour. */
export function Hatch(props: { id: string; gap?: number }) {
  const gap = props.gap ?? 5
  return (
    <pattern id={props.id} width={gap} height={gap} patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
      <line x1="0" y1="0" x2="0" y2={gap} style={{ stroke: 'var(--hatch)' }} strokeWidth="1.5" />
    </pattern>
  )
}
