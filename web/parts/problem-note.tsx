import { useEffect, useRef } from 'preact/hooks'
import { Refused } from '#web/api/client.ts'
import { Sentence } from '#web/parts/delta-e.tsx'
import { Note } from '#web/parts/note.tsx'

/**
 * What the server refused, above the buttons of the form that asked. It is read out at once and takes the focus. `<ProblemNote refused={refused} />`, undefined while there is none.
 */
export function ProblemNote({ refused }: { readonly refused: unknown }) {
  const box = useRef<HTMLDivElement>(null)
  useEffect(() => {
    if (refused !== undefined) box.current?.focus()
  }, [refused])
  if (refused === undefined) return null

  const known = refused instanceof Refused ? refused : undefined
  const loose = known?.faults.filter(({ pointer }) => pointer === '#' || pointer === '') ?? []
  return (
    <div role="alert" tabIndex={-1} ref={box}>
      {known === undefined || known.isBug ? (
        <Note kind="fault" title="Something broke here.">
          It may not have been stored: look before you try again.
          {known?.requestId === undefined ? null : ` The number of the request is ${known.requestId}.`}
        </Note>
      ) : (
        <Note kind="fault" title={<Sentence text={known.message} />}>
          {loose.map(({ detail }) => (
            <p key={detail}>
              <Sentence text={detail} />
            </p>
          ))}
        </Note>
      )}
    </div>
  )
}
