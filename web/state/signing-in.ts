import { signal } from '@preact/signals'

/** The API has said that one has to sign in first. */
export const isSignInNeeded = signal(false)

/** How often somebody signed in since the page opened: what was refused before is asked for again. */
export const timesSignedIn = signal(0)

/** Signed in: everything that waited for it goes on. */
export function signedIn(): void {
  isSignInNeeded.value = false
  timesSignedIn.value += 1
}
