import type { ProblemName } from '#api/contract/problem.ts'

/** What a person, or a script, does about each refusal. */
export const whatToDo: Readonly<Record<ProblemName, string>> = {
  'malformed-json': 'Look at the brackets, commas and quotes of what was sent, and send it again.',
  'sign-in-needed':
    'Sign in with the access phrase; a script first asks POST /api/sign-in and keeps the cookie.',
  'other-origin':
    'Write from the tool’s own pages. A script that is no page of a browser leaves the header Origin out.',
  'wrong-phrase': 'Type the phrase again, or ask whoever set the tool up for it.',
  'wrong-host':
    'Use the address that the tool said when it started. Another name for it goes into the setting ALLOWED_HOSTS.',
  'too-many-tries': 'Wait for as long as the header Retry-After says, then try again.',
  'not-found':
    'Look at the address. What stood there may have been removed; its list shows what is there now.',
  'method-not-allowed': 'Use one of the methods that the list of addresses gives for it.',
  'already-there':
    'Choose another name, or leave the id out and let one be made. Sending the same again is harmless.',
  'rule-locked': 'Write a new edition of the rule, and say why. The locked one stays, and both are shown.',
  'still-in-use':
    'Remove what needs it first, or leave it: what was measured keeps what it was measured with.',
  'changed-meanwhile': 'Read it again, look at what is different, and make your change on that.',
  'too-large':
    'Send it in several parts. A table may be pasted in pieces; rows that are in already are known again.',
  'wrong-media-type': 'Send JSON with the content type application/json; tables also go as text/csv.',
  'at-fault': 'Each fault names its place and what is wrong there. Correct those, and send it again.',
  'not-comparable':
    'Take readings that were made alike: dry with dry, the same settings, the same frame or a standard in both.',
  'database-away':
    'Wait a little and send the same again, under the same id if it names one: what was kept already is not kept twice.',
  busy: 'Wait a little and send it again. What was sent is not lost on the page.',
  'version-missing': 'Send If-Match with the version that you read, so that nobody’s change is lost.',
}
