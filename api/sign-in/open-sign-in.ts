import { accessPhrase, type PhraseCheck } from './access-phrase.ts'
import { openSessions, type Sessions } from './sessions.ts'
import { countWrongTries, type WrongTries } from './wrong-tries.ts'

/** What signing in needs; without a phrase there is none of it. */
export type SigningIn = {
  readonly isPhrase: PhraseCheck
  readonly sessions: Sessions
  readonly tries: WrongTries
  /** The cookie travels over https alone. */
  readonly secure: boolean
}

export async function openSignIn(phrase: string, publicUrl: string | undefined): Promise<SigningIn> {
  return {
    isPhrase: await accessPhrase(phrase),
    sessions: openSessions(),
    tries: countWrongTries(),
    secure: publicUrl?.startsWith('https:') ?? false,
  }
}
