/** What stood in a field, short enough for a sentence. */
export type Got = number | { text: string } | { list: number } | 'object'

/** What a field is called: its key with the places in a list (`at[0]`), or null for the document as a whole. */
export type FieldName = string | null

export type Noun = 'a number' | 'a whole number' | 'text' | 'true or false' | 'a list' | 'an object' | 'null'

export type Comparison = 'more than' | 'less than' | 'at least' | 'at most'

/** A value as it was given, as parts of a sentence keep it. */
export function gotOf(value: unknown): Got {
  if (typeof value === 'number') return value
  if (Array.isArray(value)) return { list: value.length }
  if (typeof value === 'object' && value !== null) return 'object'
  const text = JSON.stringify(value) ?? String(value)
  return { text: text.length > 60 ? `${text.slice(0, 57)}…` : text }
}

/** The same in English. */
export function gotText(got: Got | string): string {
  if (got === 'object') return 'an object'
  if (typeof got !== 'object') return String(got)
  return 'list' in got ? `a list of ${got.list}` : got.text
}

const the = (name: FieldName): string => name ?? 'the document'

interface Field {
  name: FieldName
  got: Got
}

/** A number that contradicts another one of the same document. */
interface Against {
  bound: number
  got: number
}

/** What a contract finds in a field, in English: names the field, says what is allowed and repeats what was given. */
export const shapeSentences = {
  missing: (of: { name: FieldName }) => `${the(of.name)} is missing`,
  wrongType: (of: Field & { noun: Noun }) => `${the(of.name)} must be ${of.noun}, got ${gotText(of.got)}`,
  infinite: (of: { name: FieldName; got: string }) => `${the(of.name)} must be a finite number, got ${of.got}`,
  outOfRange: (of: Field & { comparison: Comparison; bound: number }) =>
    `${the(of.name)} must be ${of.comparison} ${of.bound}, got ${gotText(of.got)}`,
  entries: (of: { name: FieldName; comparison: Comparison; entries: number; got: number }) =>
    `${the(of.name)} must have ${of.comparison} ${of.entries} ${String(of.entries) === '1' ? 'entry' : 'entries'}, got ${of.got}`,
  characters: (of: { name: FieldName; comparison: Comparison; characters: number; got: number }) =>
    `${the(of.name)} must have ${of.comparison} ${of.characters} characters, got ${of.got}`,
  emptyText: (of: { name: FieldName }) => `${the(of.name)} must not be empty`,
  unknownFields: (of: { keys: readonly string[] }) =>
    `${of.keys.map((key) => gotText(gotOf(key))).join(', ')} is not a field that is known here`,
  noneOf: (of: Field & { allowed: readonly string[] }) =>
    `${the(of.name)} must be ${of.allowed.join(' or ')}, got ${gotText(of.got)}`,
  noForm: (of: Field) => `${the(of.name)} has none of the forms that are allowed here, got ${gotText(of.got)}`,
  notAnId: (of: { got: Got }) => `${gotText(of.got)} can not be used as an id here`,
  otherwiseWritten: (of: Field) => `${the(of.name)} is not written as expected, got ${gotText(of.got)}`,
  notMultiple: (of: Field & { divisor: number }) =>
    `${the(of.name)} must be a multiple of ${of.divisor}, got ${gotText(of.got)}`,
  notTenths: (of: Field) => `${the(of.name)} must be a multiple of 0.1 s, got ${gotText(of.got)}`,
  takenId: (of: { got: Got }) => `${gotText(of.got)} can not be used as an id: the word is taken by the program`,
  controlInId: (of: { got: Got }) => `an id can not contain control characters, got ${gotText(of.got)}`,
  otherFormat: (of: { got: Got }) => `format must be 1, the only one known here, got ${gotText(of.got)}`,
  likelyBelowLow: (of: { low: number; likely: number }) => `likely must be at least low (${of.low}), got ${of.likely}`,
  highBelowLikely: (of: { likely: number; high: number }) =>
    `high must be at least likely (${of.likely}), got ${of.high}`,
  spreadTooLarge: (of: { median: number; spread: number; most: number }) =>
    `spread must be less for a median of ${of.median}, got ${of.spread}: one in a thousand would take over ${of.most} s`,
  spreadOutside: (of: { median: number; spread: number; low: number; high: number }) =>
    `spread must be less for a median of ${of.median}, got ${of.spread}: one in a thousand would lie outside of ${of.low} to ${of.high}`,
  highNotAbove: (of: { low: number; high: number }) => `high must be above low (${of.low}), got ${of.high}`,
  shotMissing: (_: Record<string, never>) => 'shot is needed to time a recovery, got null',
  freeCurrent: (of: Against) => `freeCurrent must be at most half of the stall current (${of.bound} A), got ${of.got}`,
  rod: (of: Against) => `rod must be at most 0.95 of the bore (${of.bound} m), got ${of.got}`,
  pressure: (of: Against) => `pressures must rise: after ${of.bound} came ${of.got}`,
  flow: (of: Against) => `flow can not rise with pressure: after ${of.bound} came ${of.got}`,
  lowBelowRoom: (of: Against) => `low must be above ambient (${of.bound}), got ${of.got}`,
  lowAboveWorking: (of: Against) => `low must be at most working (${of.bound}), got ${of.got}`,
  onAboveOff: (of: Against) => `on must be at most off (${of.bound}), got ${of.got}`,
  notADate: (of: { got: Got }) => `a date is written 2031-02-28, got ${gotText(of.got)}`,
  notAMoment: (of: { got: Got }) => `a moment is written 2031-02-28 or 2031-02-28T14:05Z, got ${gotText(of.got)}`,
  notAMomentWithOffset: (of: { got: Got }) => `a moment is written 2031-02-28T14:05Z, got ${gotText(of.got)}`,
  notTeams: (of: { got: Got }) => `teams are two to six of them with commas between, got ${gotText(of.got)}`,
  notATeam: (of: { got: Got }) => `a team is up to 12 letters, digits or hyphens, got ${gotText(of.got)}`,
  notAUuid: (of: { got: Got }) => `an id of a record is a UUID in small letters, got ${gotText(of.got)}`,
  notBase64: (of: { got: Got }) => `the data of a photo are Base64, got ${gotText(of.got)}`,
} as const
