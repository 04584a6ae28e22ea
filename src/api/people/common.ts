/**
 * Words that lists of leaked passwords begin with (from memory; common practice): a passphrase that is one of them repeated,
 * with figures around it or not, is among the first that are tried.
 */
const words = [
  'password',
  'passphrase',
  'passwort',
  'kennwort',
  'letmein',
  'welcome',
  'willkommen',
  'iloveyou',
  'ichliebedich',
  'sunshine',
  'princess',
  'football',
  'baseball',
  'superman',
  'trustno',
  'dragon',
  'monkey',
  'master',
  'shadow',
  'secret',
  'geheim',
  'admin',
  'administrator',
  'changeme',
  'robot',
  'robots',
  'robotics',
  'cyclewright',
  'test',
  'qwertyuiop',
  'qwertzuiop',
  'asdfghjkl',
  'zxcvbnm',
  'yxcvbnm',
  'qwerty',
  'qwertz',
  'abc',
  'correcthorsebatterystaple',
]

/** Rows of keys and the alphabet, forwards and backwards. */
const rows = [
  '01234567890123456789',
  'abcdefghijklmnopqrstuvwxyz',
  'qwertyuiopasdfghjklzxcvbnm',
  'qwertzuiopasdfghjklyxcvbnm',
]
const runs = rows.flatMap((row) => [row, [...row].reverse().join('')])

/** Whether a text is one short part again and again. */
function repeats(text: string): boolean {
  for (let length = 1; length <= text.length / 3; length++) {
    const part = text.slice(0, length)
    if (part.repeat(Math.ceil(text.length / length)).startsWith(text)) return true
  }
  return false
}

/** Whether a passphrase is among those that anybody would try first. */
export function common(passphrase: string, nickname: string): boolean {
  const text = passphrase.toLowerCase().replace(/[\s._-]+/g, '')
  if (repeats(text) || runs.some((run) => run.includes(text))) return true
  const known = [...words, nickname.toLowerCase().replace(/[\s._-]+/g, '')].filter((word) => word.length > 1)
  // What is left when known words and figures are taken out.
  const rest = known
    .sort((a, b) => b.length - a.length)
    .reduce((left, word) => left.replaceAll(word, ''), text)
    .replace(/[\d!?*#$%&+@]+/g, '')
  return rest.length < 3
}
