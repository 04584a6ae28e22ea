/** Numbers that belong to one forecast for good, by the beginning of its id (hexadecimal). */
export const drawOf = (id: string): number => Number.parseInt(id.slice(0, 13), 16)

/** What a forecast's numbers are for. */
export const streams = { red: 0, blue: 1, band: 2 } as const
