/** How values are written where digits alone do not say them. */
export const format = {
  under: (share: string) => `under ${share}`,
  over: (share: string) => `over ${share}`,
  whole: 'the whole document',
  member: (number: number) => `no. ${number}`,
  none: 'none',
  yes: 'yes',
  no: 'no',
}
