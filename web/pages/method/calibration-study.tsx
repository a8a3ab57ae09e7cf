import { counted, grouped, perCent } from '#web/form/number-words.ts'
import { coverageTable, floorInWords, holdsTable } from '#web/pages/method/calibration-tables.ts'
import { MethodSection } from '#web/pages/method/method-section.tsx'
import { PlainTable } from '#web/parts/plain-table.tsx'
import calibration from './calibration.json' with { type: 'json' }

/** How often the rule is wrong, counted on made-up trials whose truth is known. */
export function CalibrationStudy() {
  const { falseHolds, trueHolds, coverage, trials, skeinsPerPot, worst } = calibration
  return (
    <MethodSection id="calibration" title="Is the rule as honest as it says?">
      <p>
        {grouped(trials)} trials were made up for each line, their truth known, and judged by the same code. A
        level whose true extra loss is exactly the margin should hold in 5 % of them. In the whole study, with
        a noise floor up to {floorInWords(1 / 3)}, with losses of the reference and with lost skeins, it held
        in {perCent(worst, 1)} at the most. Here are those in which the reference loses nothing:
      </p>
      <PlainTable name="Held although the true extra loss is the margin" data={holdsTable(falseHolds)} />
      <p>“Raw alone” is why noise is taken off; “looked at every session” is why sessions are planned.</p>
      <p>
        The other way round: how often a level holds that loses nothing extra, when the reference loses as
        much as the margin. Sessions, and quiet measuring, are what makes an answer come.
      </p>
      <PlainTable name="Held, and rightly so" data={holdsTable(trueHolds, { ruleOnly: true })} />
      <p>
        And why the pot is the replicate: with {counted(skeinsPerPot, 'skein')} in each pot, 95 % intervals by
        pots hold the truth as often as they say. Those that count skeins do not.
      </p>
      <PlainTable name="Intervals by pots and by skeins" data={coverageTable(coverage)} />
      <p class="soft small">
        Made again by <code>npm run calibrate</code>, seed {calibration.seed}.
      </p>
    </MethodSection>
  )
}
