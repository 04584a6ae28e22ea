// Coming in
export { invitations } from './invitations.ts'
// Who is in
export { audit, devices, named, people } from './people.ts'
export { session } from './session.ts'
