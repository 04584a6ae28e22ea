import { askSignIn } from '../../data/signIn.ts'
import { Panel } from '../../shell/Panel.tsx'
import { words } from '../../words/catalogue.ts'
import { SignInForm } from './SignInForm.tsx'

/** Over whatever is open, so that nothing that was typed is lost. */
export default function SignInPanel() {
  const texts = words().people
  const close = () => askSignIn(false)
  return (
    <Panel title={texts.signIn} open onClose={close}>
      <p>{texts.signInFor}</p>
      <SignInForm onDone={close} />
    </Panel>
  )
}
