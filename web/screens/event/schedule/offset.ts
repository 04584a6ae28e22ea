/** This browser's own distance from universal time on a day, as it is written: '+01:00'. */
export function offsetOn(day: string | undefined): string {
  const minutes = -new Date(`${day ?? '2031-01-01'}T12:00`).getTimezoneOffset()
  const two = (value: number) => String(Math.floor(value)).padStart(2, '0')
  return `${minutes < 0 ? '-' : '+'}${two(Math.abs(minutes) / 60)}:${two(Math.abs(minutes) % 60)}`
}
