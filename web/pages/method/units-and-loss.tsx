import { Formula, MethodSection } from '#web/pages/method/method-section.tsx'
import { DeltaE } from '#web/parts/delta-e.tsx'

/** What is counted, and what a loss is. */
export function UnitsAndLoss() {
  return (
    <>
      <MethodSection id="units" title="What counts as one">
        <p>
          The pot is the replicate: not the skein in it, and never the reading. Readings are averaged to their
          skein, skeins to their vessel, vessels to their session.
        </p>
        <p>
          A treatment’s unit is the coarsest of session, vessel, parent skein and skein within which its level
          never changes. It is found from the records and said in every finding: “8 skeins from 8 packets in 4
          sessions, 16 readings”. Six skeins in one pot are one pot.
        </p>
        <p>
          A level with one unit in the whole trial, or a treatment that was one vessel throughout, is not
          settled: what came from the treatment cannot be told from what came from that pot.
        </p>
      </MethodSection>
      <MethodSection id="loss" title="Loss and extra loss">
        <p>
          L*, a* and b* are averaged first. The loss of a skein is the difference between its mean before and
          its mean after, as <DeltaE /> (ISO/CIE 11664-6). The extra loss of a level is its loss less that of
          the reference in the same session, so that what a session does to all its skeins drops out.
        </p>
        <p>
          The way the colour went, lighter, duller, greener, is told from the signed parts ΔL*, Δa* and Δb*.
          One unit gives one arrow; each part has a t interval, and from four units on Hotelling’s T² asks of
          all three together whether there is a shift at all.
        </p>
      </MethodSection>
      <MethodSection id="noise" title="Noise, raw and net">
        <p>
          A difference is never negative, so measuring an unchanged skein twice looks like fading. It
          lengthens small changes much and large ones hardly, which makes the raw extra loss too small. So a
          level holds only if it does so both raw and net of noise:
        </p>
        <Formula>net loss = sign(ΔE² − r²) · √|ΔE² − r²|</Formula>
        <p>
          r is the root mean square difference between two looks at the same unchanged skein. It comes, in
          this order, from twins read again in the trial, from repeats or a gauge check of the same instrument
          and number of placings, or else from a planning value. The finding says which.
        </p>
        <p>
          The floor is the mean of those differences. Over a third of the margin there is a caution. Over half
          of it nothing can hold: this way of measuring cannot see this margin, and the finding says how many
          placings would. The smallest difference that can be told is 2.8 × the SD of one placing ÷ √placings.
        </p>
      </MethodSection>
    </>
  )
}
