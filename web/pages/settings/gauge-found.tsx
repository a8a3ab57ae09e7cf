import { type Noise, readingsNeeded } from '#api/science/colour/noise.ts'
import { counted, figure, listed } from '#web/form/number-words.ts'
import type { GaugeRows } from '#web/pages/settings/gauge-rows.ts'
import { DeltaE } from '#web/parts/delta-e.tsx'
import { Note } from '#web/parts/note.tsx'

/** Fewer degrees of freedom say little of a spread. */
const fewDf = 10

/** What a gauge check says, as it is typed. */
export function GaugeFound({ rows, found }: { readonly rows: GaugeRows; readonly found: Noise | undefined }) {
  const hasSpread = found !== undefined && found.sdd > 0
  return (
    <>
      <div role="status">
        {found === undefined ? null : (
          <p>
            {counted(rows.things.length, 'thing')}, {counted(found.df + rows.things.length, 'reading')}. SD of
            one placing: L* {figure(found.sd.L)}, a* {figure(found.sd.a)}, b* {figure(found.sd.b)}. Two
            readings of an unchanged thing differ by <DeltaE /> {figure(found.floor)} on average.
            {hasSpread
              ? ` A margin of 1.0 needs ${counted(readingsNeeded(found.sd, 1), 'placing')} a skein.`
              : ''}
          </p>
        )}
      </div>
      <div>
        {found === undefined || hasSpread ? null : (
          <Note kind="doubt" title="All readings of each thing are equal">
            Copied or rounded values tell nothing about noise.
          </Note>
        )}
        {hasSpread && found.df < fewDf ? (
          <Note title={`Known from ${counted(found.df, 'degree')} of freedom only`}>
            Read more things again.
          </Note>
        ) : null}
        {rows.readOnce.length === 0 ? null : (
          <Note title={`Read once only: ${listed(rows.readOnce.slice(0, 6))}`}>
            Read once, a thing says nothing about noise.
          </Note>
        )}
      </div>
    </>
  )
}
