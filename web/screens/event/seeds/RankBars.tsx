/** Chance of each rank as a bar, from the first at the left. The scale is the row's own: the tallest fills it. */
export function RankBars({ ranks, label }: { ranks: readonly number[]; label: string }) {
  const most = Math.max(1e-9, ...ranks)
  const width = 200 / ranks.length
  return (
    <svg className="rank-bars" viewBox="0 0 200 24" preserveAspectRatio="none" role="img" aria-label={label}>
      {ranks.map((chance, place) =>
        chance > 0 ? (
          <rect
            // biome-ignore lint/suspicious/noArrayIndexKey: a rank is its place
            key={place}
            x={place * width}
            width={width * 0.86}
            y={24 - (22 * chance) / most}
            height={(22 * chance) / most}
          />
        ) : null,
      )}
      <line x1="0" x2="200" y1="24" y2="24" vectorEffect="non-scaling-stroke" />
    </svg>
  )
}
