import { Hatch } from './Hatch.tsx'

export type Side = 'ours' | 'theirs'

export const sideOf = (robot: number): Side => (robot < 3 ? 'ours' : 'theirs')
export const sideColour = (side: Side): string => (side === 'ours' ? 'var(--loss)' : 'var(--deep)')

/** The ground of an alliance's robots: bare for ours, lines for theirs, so that colour is not the only sign. */
export function SidePattern(props: { id: string }) {
  return <Hatch id={props.id} gap={5} />
}

/** A robot's letter and position in its alliance's colour and pattern, beside its name. The words say the same. */
export function RobotSign(props: { side: Side; sign: string }) {
  const { side, sign } = props
  return (
    <svg className="robot-sign" width="34" height="26" viewBox="0 0 34 26" aria-hidden="true">
      <rect
        x="1.5"
        y="1.5"
        width="31"
        height="23"
        rx={side === 'ours' ? 0 : 8}
        style={{ fill: 'var(--sheet)', stroke: sideColour(side) }}
        strokeWidth="2.5"
        strokeDasharray={side === 'ours' ? undefined : '5 2.5'}
      />
      <text x="17" y="18" fontSize="14" fontWeight="700" textAnchor="middle">
        {sign}
      </text>
    </svg>
  )
}
