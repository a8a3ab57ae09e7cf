import { useEffect, useRef } from 'preact/hooks'
import type { TableKept } from '#api/contract/table.ts'
import { counted, grouped, listed } from '#web/form/number-words.ts'
import { Button, LinkButton } from '#web/parts/button.tsx'
import { Sentence } from '#web/parts/delta-e.tsx'
import { TableBox } from '#web/parts/table-box.tsx'

export type KeptTableProps = {
  readonly trialId: string
  readonly kept: TableKept
  /** Go on with the rows that were left out; undefined where they cannot be told from those that are kept. */
  readonly onLeftOut: (() => void) | undefined
  readonly onAnother: () => void
}

/** The third step: what was kept, and what was left out and why. */
export function KeptTable({ trialId, kept, onLeftOut, onAnother }: KeptTableProps) {
  const heading = useRef<HTMLHeadingElement>(null)
  useEffect(() => heading.current?.focus(), [])
  const { makes, leftOut, rows } = kept
  const made = [
    makes.sessions > 0 ? counted(makes.sessions, 'session') : '',
    makes.vessels > 0 ? counted(makes.vessels, 'vessel') : '',
    makes.skeins > 0 ? counted(makes.skeins, 'skein') : '',
    makes.readings > 0 ? counted(makes.readings, 'reading') : '',
    makes.outcomes > 0 ? counted(makes.outcomes, 'other result') : '',
  ].filter((words) => words !== '')
  return (
    <div class="stack">
      <h2 ref={heading} tabIndex={-1}>
        {kept.kept === rows
          ? `${counted(rows, 'row')} kept`
          : `${grouped(kept.kept)} of ${counted(rows, 'row')} kept`}
      </h2>
      {made.length === 0 ? null : <p>They make {listed(made)}.</p>}
      {leftOut.length === 0 ? null : (
        <>
          <h3>{counted(leftOut.length, 'row')} left out</h3>
          <TableBox name="Rows left out">
            <thead>
              <tr>
                <th scope="col">row</th>
                <th scope="col">what it says</th>
                <th scope="col">why</th>
              </tr>
            </thead>
            <tbody>
              {leftOut.slice(0, 200).map((fault) => (
                <tr key={fault.row}>
                  <th scope="row">{grouped(fault.row)}</th>
                  <td>{fault.title}</td>
                  <td>
                    <Sentence text={fault.detail} />
                  </td>
                </tr>
              ))}
            </tbody>
          </TableBox>
          {leftOut.length > 200 ? <p class="soft">And {grouped(leftOut.length - 200)} more.</p> : null}
        </>
      )}
      <div class="row">
        {leftOut.length > 0 && onLeftOut !== undefined ? (
          <Button onPress={onLeftOut}>Mend the rows left out</Button>
        ) : null}
        <LinkButton kind="do" href={`/trials/${trialId}/findings`}>
          Open the findings
        </LinkButton>
        <Button onPress={onAnother}>Paste another table</Button>
      </div>
    </div>
  )
}
