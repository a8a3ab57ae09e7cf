import { useState } from 'preact/hooks'
import { faultsAt } from '#web/api/client.ts'
import { signIn } from '#web/api/sign-in.ts'
import { Field } from '#web/form/field.tsx'
import { Button } from '#web/parts/button.tsx'
import { PageTitle } from '#web/parts/page-title.tsx'
import { ProblemNote } from '#web/parts/problem-note.tsx'
import { signedIn } from '#web/state/signing-in.ts'

/** The access phrase, and a button. `<SignInForm onSignedIn={goOn} />` */
export function SignInForm({ onSignedIn }: { readonly onSignedIn?: () => void }) {
  const [phrase, setPhrase] = useState('')
  const [busy, setBusy] = useState(false)
  const [refused, setRefused] = useState<unknown>()
  const send = async (): Promise<void> => {
    setBusy(true)
    setRefused(undefined)
    try {
      await signIn(phrase)
      signedIn()
      onSignedIn?.()
    } catch (thrown) {
      setRefused(thrown)
      setBusy(false)
    }
  }
  return (
    <form
      class="stack"
      noValidate
      onSubmit={(event) => {
        event.preventDefault()
        void send()
      }}
    >
      <PageTitle>Sign in</PageTitle>
      <Field
        name="phrase"
        label="Access phrase"
        help="Whoever set the tool up chose it."
        kind="password"
        value={phrase}
        onInput={setPhrase}
        faults={faultsAt(refused, '#/phrase').map((detail) => ({ detail }))}
        required
      />
      <ProblemNote refused={refused} />
      <div class="row">
        <Button kind="do" type="submit" busy={busy ? 'Signing in …' : undefined}>
          Sign in
        </Button>
      </div>
    </form>
  )
}
