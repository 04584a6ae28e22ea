/** Dashes tell lines apart where colours can not. */
export const dashOf = (index: number): string => ['', '6 4', '2 3'][index % 3]!

/** Which line is which. */
export function LineKey({ names }: { names: string[] }) {
  return (
    <ul className="line-key soft small">
      {names.map((name, index) => (
        <li key={name}>
          <svg width="34" height="8" viewBox="0 0 34 8" aria-hidden="true">
            <path
              d="M1 4H33"
              className="curve"
              style={{ stroke: `var(--series-${index + 1})` }}
              strokeDasharray={dashOf(index)}
            />
          </svg>
          {name}
        </li>
      ))}
    </ul>
  )
}
