import type { peopleSentences } from '../../../src/model/scouting/people.ts'
import type { Words } from '../catalogue.ts'

/** For whom something is not. */
const whom = {
  lead: 'die Leitung',
  mechanism: 'die Mechanikgruppe',
  scout: 'Scouts',
  driveTeam: 'das Fahrteam',
  viewer: 'Zuschauer',
}

/** What is refused where people sign in and are invited. */
export const ofPeople: Pick<Words['problems'], keyof typeof peopleSentences> = {
  noSession: () => 'Dieser Server gehört einem Team: Melde dich an, oder scanne eine Einladung',
  notForRole: ({ role }) => `Das ist nicht für ${whom[role]}; die Leitung kann deine Rolle ändern`,
  wrongPassphrase: () => 'Dieser Spitzname und diese Passphrase gehören nicht zusammen',
  tooManyTries: ({ seconds }) =>
    `Mit diesem Spitznamen gab es zu viele falsche Versuche: Versuch es in ${seconds} s noch einmal`,
  tooManyRequests: ({ seconds }) =>
    `Dieses Gerät fragt öfter, als der Server einem antwortet: In ${seconds} s geht es weiter`,
  manySigningIn: () => 'Gerade melden sich zu viele an: Versuch es in ein paar Sekunden noch einmal',
  linkUnknown: () => 'Diesen Link gibt es nicht, oder ein neuerer ist an seiner Stelle',
  linkUsed: () => 'Dieser Link ist schon benutzt: Jeder gilt einmal',
  linkExpired: () => 'Dieser Link ist abgelaufen: Bitte um einen neuen',
  linkWithdrawn: () => 'Die Leitung hat diese Einladung zurückgezogen: Bitte um eine neue',
  nicknameTaken: ({ nickname }) => `„${nickname}“ heißt hier schon jemand: Wähle einen anderen Spitznamen`,
  nicknameMissing: () => 'Es braucht einen Spitznamen: So, wie das Team dich nennt',
  passphraseMissing: () => 'Die Leitung braucht eine Passphrase, um sich anzumelden',
  shortPassphrase: ({ least, got }) =>
    `Eine Passphrase hat mindestens ${least} Zeichen, diese hat ${got}: Vier oder fünf Wörter sind leicht zu behalten`,
  commonPassphrase: () => 'Diese Passphrase ist eine der ersten, die jeder versuchen würde: Wähle eine andere',
  notCurrentPassphrase: () => 'Das ist nicht deine jetzige Passphrase',
  claimFirst: () =>
    'Dieser Server gehört noch niemandem: Öffne zuerst den Link zum Einrichten, den der Server beim Start ausgibt',
  lastLead: () => 'Das ist die letzte Leitung mit einer Passphrase: Gib erst jemand anderem diese Rolle',
  otherNickname: ({ nickname }) =>
    `„${nickname}“ heißt diese Person nicht: Tippe zum Löschen den Spitznamen, wie er hier steht`,
  noPerson: ({ id }) => `Es gibt niemanden mit der Kennung „${id}“`,
  copiesElsewhere: () =>
    'Die Datenbank dieses Servers wird mit ihren eigenen Mitteln kopiert: wer ihn betreibt, weiß, wo die Kopien sind',
  noBackup: ({ name }) => `Es gibt keine Kopie der Datenbank mit dem Namen „${name}“`,
  noDevice: ({ id }) => `Es gibt kein Gerät mit der Kennung „${id}“`,
  noInvitation: ({ id }) => `Es gibt keine offene Einladung mit der Kennung „${id}“`,
}
