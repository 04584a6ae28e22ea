import { Link } from 'wouter'
import { useSession } from '../data/session.ts'

/** Who is signed in on this device. */
export default function WhoIsIn() {
  const nickname = useSession().data?.person?.nickname
  return nickname ? (
    <Link href="/people" className="who-is-in">
      {nickname}
    </Link>
  ) : null
}
