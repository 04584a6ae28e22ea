/**
 * A spreadsheet takes a text that begins with = + - @, a tab or a line end for a formula, and runs it. In front of such a
 * text stands an apostrophe in the file; in front of a text that itself begins with apostrophes before one of them, one more.
 */
const dangerous = /^'*[=+\-@\t\r\n]/

export const escapeText = (text: string): string => (dangerous.test(text) ? `'${text}` : text)

/** Undoes `escapeText`: takes one apostrophe off where it stands in front of such a text. */
export const unescapeText = (text: string): string =>
  text.startsWith("'") && dangerous.test(text.slice(1)) ? text.slice(1) : text
