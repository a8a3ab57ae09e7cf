import type { ComponentChildren } from 'preact'
import { useLocation } from 'preact-iso'
import { SignInForm } from '#web/parts/sign-in-form.tsx'
import { isSignInNeeded } from '#web/state/signing-in.ts'

/** What only those see who are signed in. While one signs in anew it stays as it is, with all that was typed. */
export function SignedIn({ children }: { readonly children: ComponentChildren }) {
  const { path } = useLocation()
  const isNeeded = isSignInNeeded.value && path !== '/sign-in'
  return (
    <>
      {isNeeded ? <SignInForm /> : null}
      <div hidden={isNeeded}>{children}</div>
    </>
  )
}
