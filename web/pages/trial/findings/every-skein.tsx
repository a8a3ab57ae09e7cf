import { useState } from 'preact/hooks'
import type { Finding, SkeinFinding } from '#api/contract/finding.ts'
import { counted, figure } from '#web/form/number-words.ts'
import { isOutside } from '#web/pages/trial/findings/finding-words.ts'
import { type SkeinColumns, skeinColumns } from '#web/pages/trial/findings/skein-columns.ts'
import { Button, LinkButton } from '#web/parts/button.tsx'
import { Sentence } from '#web/parts/delta-e.tsx'
import { Section } from '#web/parts/section.tsx'
import { SkeinDot } from '#web/parts/skein-dot.tsx'
import { Swatch } from '#web/parts/swatch.tsx'
import { LimitedResult, TableBox } from '#web/parts/table-box.tsx'

/** So many rows at first; paper has them all. */
const rowsAtFirst = 12

/** Every skein with its readings and results, the lost ones with their reason. */
export function EverySkein({ finding }: { readonly finding: Finding }) {
  const [all, setAll] = useState(false)
  const { skeins, trialId } = finding
  const columns = skeinColumns(finding)
  const more = skeins.length - rowsAtFirst
  const lost = skeins.filter(({ status }) => status === 'lost').length
  if (skeins.length === 0) return null
  return (
    <Section
      title="Every skein"
      says={`${counted(skeins.length, 'skein')}, ${lost === 0 ? 'none' : lost} lost.${columns.sidesSay === '' ? '' : ` Each column: the worst ${columns.sidesSay} …`}`}
      aside={
        <LinkButton kind="plain" small href={`/api/trials/${trialId}/table`} download>
          save as CSV
        </LinkButton>
      }
    >
      <TableBox name="Every skein">
        <SkeinHead columns={columns} finding={finding} />
        <tbody>
          {skeins.map((skein, place) => (
            <tr key={skein.id} class={all || place < rowsAtFirst ? undefined : 'finding-folded-row'}>
              <SkeinCells skein={skein} columns={columns} finding={finding} />
            </tr>
          ))}
        </tbody>
      </TableBox>
      {more > 0 ? (
        <Button kind="plain" expanded={all} onPress={() => setAll(!all)}>
          {all ? `Show the first ${rowsAtFirst}` : `Show the other ${more}`}
        </Button>
      ) : null}
    </Section>
  )
}

type CellsProps = { readonly columns: SkeinColumns; readonly finding: Finding }

function SkeinHead({ columns, finding }: CellsProps) {
  const { coloured, axis, value, grade, sides } = columns
  const channels = ['L*', 'a*', 'b*']
  return (
    <thead>
      {coloured ? (
        <tr class="wide-only">
          <td colSpan={3} />
          <th scope="colgroup" colSpan={3} class="figure">
            before
          </th>
          <th scope="colgroup" colSpan={3} class="figure finding-wraps">
            after {finding.outcome?.wearInWords}
          </th>
          <td colSpan={1 + (grade ? 1 : 0) + sides.length} />
        </tr>
      ) : null}
      <tr>
        <th scope="col">Skein</th>
        <th scope="col">{axis}</th>
        {coloured ? <th scope="col">before, after</th> : null}
        {coloured
          ? ['before', 'after'].flatMap((when) =>
              channels.map((channel) => (
                <th key={`${when} ${channel}`} scope="col" class="figure wide-only">
                  {channel}
                </th>
              )),
            )
          : null}
        {value === null ? null : (
          <th scope="col" class="figure">
            <Sentence text={value} />
          </th>
        )}
        {grade ? (
          <th scope="col" class="figure">
            grade
          </th>
        ) : null}
        {sides.map(({ key, label }) => (
          <th key={key} scope="col" class={columns.sidesSay === '' ? 'figure' : 'figure step-table-head'}>
            {label}
          </th>
        ))}
      </tr>
    </thead>
  )
}

function SkeinCells({ skein, columns, finding }: CellsProps & { readonly skein: SkeinFinding }) {
  const { coloured, ticks, decimals, grade, sides } = columns
  const { before, after } = skein
  const level = <td class="finding-level">{ticks.get(skein.levelId ?? '') ?? '–'}</td>
  if (skein.status === 'lost')
    return (
      <>
        <th scope="row">
          <span class="finding-lost">
            <SkeinDot shape="lost" /> {skein.code}
          </span>
        </th>
        {level}
        <td colSpan={columns.afterLevel} class="soft">
          lost: {skein.lostReason ?? 'no reason given'}
        </td>
      </>
    )
  return (
    <>
      <th scope="row">{skein.code}</th>
      {level}
      {coloured ? (
        <td>
          <Swatch size="small" colours={before && after ? [before, after] : []} />
        </td>
      ) : null}
      {coloured
        ? [['before', before] as const, ['after', after] as const].flatMap(([when, colour]) =>
            (['L', 'a', 'b'] as const).map((channel) => (
              <td key={`${when} ${channel}`} class={`figure wide-only${when === 'before' ? ' soft' : ''}`}>
                {colour === null ? '–' : figure(colour[channel], 1)}
              </td>
            )),
          )
        : null}
      {columns.value === null ? null : (
        <td class="figure strong">{skein.value === null ? '–' : columns.said(skein.value, decimals)}</td>
      )}
      {grade ? <td class="figure">{skein.grade ?? '–'}</td> : null}
      {sides.map(({ key }) => (
        <td key={key} class="figure">
          <LimitedResult words={skein.side[key]?.text ?? '–'} outside={outsideIn(skein, key, finding)} />
        </td>
      ))}
    </>
  )
}

function outsideIn({ side }: SkeinFinding, key: string, { rule }: Finding): boolean {
  const result = side[key]
  return result !== undefined && isOutside(key, result.value, rule?.conditions ?? [])
}
