import { useLocation } from 'preact-iso'
import { ask } from '#web/api/client.ts'
import { signOut } from '#web/api/sign-in.ts'
import { useKeeping } from '#web/pages/settings/use-keeping.ts'
import { Button } from '#web/parts/button.tsx'
import { PageTitle } from '#web/parts/page-title.tsx'
import { ProblemNote } from '#web/parts/problem-note.tsx'
import { Reading } from '#web/parts/reading.tsx'
import { SignInForm } from '#web/parts/sign-in-form.tsx'
import { useLoaded } from '#web/state/loaded.ts'

/** Signing in and out; `?then=/sheets/…` says where one wanted to go. */
export function SignInPage() {
  const then = placeToGo(useLocation().query.then)
  const goOn = (): void => window.location.replace(then ?? '/')
  // Whoever is signed in already goes straight on: a link from elsewhere comes without the cookie.
  const inside = useLoaded('sign-in', async (signal) => {
    await ask<unknown>('/api/settings', { signal })
    if (then !== undefined) goOn()
  })
  if (inside.kind === 'reading') return <Reading />
  if (inside.kind === 'refused') return <SignInForm onSignedIn={goOn} />
  return <SignOut />
}

function SignOut() {
  const leaving = useKeeping()
  const leave = async (): Promise<void> => {
    if (await leaving.keep(signOut)) window.location.replace('/sign-in')
  }
  return (
    <div class="stack">
      <PageTitle>Signed in</PageTitle>
      <p>You are signed in, or this tool asks for no phrase.</p>
      <ProblemNote refused={leaving.refused} />
      <div class="row">
        <Button onPress={() => void leave()} busy={leaving.busy ? 'Signing out …' : undefined}>
          Sign out
        </Button>
      </div>
    </div>
  )
}

/**
 * An address of this tool alone: nobody is led elsewhere by a link to this page.
 *
 * @example
 * ['/sheets/1', '//evil.example', '/\\evil.example', 'https://evil.example', undefined].map(placeToGo) // ['/sheets/1', undefined, undefined, undefined, undefined]
 */
export function placeToGo(then: string | undefined): string | undefined {
  return then !== undefined && /^\/(?![/\\])[\w/.-]*$/.test(then) ? then : undefined
}
