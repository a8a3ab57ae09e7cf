import { MethodSection } from '#web/pages/method/method-section.tsx'

/** Evidence steps, statistics, across trials. */
export function EvidenceAndStatistics() {
  return (
    <>
      <MethodSection id="evidence" title="Evidence, E0 to E4">
        <p>A step says how much was done, not how well it went. It is worked out from the record.</p>
        <ul>
          <li>
            <strong>E0</strong>: less than any of these, an anecdote.
          </li>
          <li>
            <strong>E1</strong>: one session, with a reference or control and a twin or blank.
          </li>
          <li>
            <strong>E2</strong>: three or more lots (for a way of working: sessions), the rule locked before
            the first row that it uses, the noise known.
          </li>
          <li>
            <strong>E3</strong>: five or more lots, two protocols, every grade blind by two graders, read
            again on another day within noise or half a step.
          </li>
          <li>
            <strong>E4</strong>: the report of an outside laboratory attached. We do not check it.
          </li>
        </ul>
        <p>
          A claim counts lots, and the worst lot decides. When n lots out of n hold, up to 1 − 0.05^(1 ÷ n) of
          all lots may still not, at 95 %: 63 % after 3, 45 % after 5, 26 % after 10. What was held constant
          at one value narrows the claim to that value.
        </p>
      </MethodSection>
      <MethodSection id="statistics" title="Statistics">
        <p>
          Tables with gaps and several factors go to a linear mixed model, fitted by restricted maximum
          likelihood (REML), with sessions and the vessels in them at random and degrees of freedom by
          Satterthwaite. A variance that comes out as zero does not turn skeins into replicates: the degrees
          of freedom are then those of the coarsest group within which the treatment does not vary. Means are
          marginal means; all pairs go by Tukey, pairs with a reference by Dunnett, others by Holm.
        </p>
        <p>
          Where spreads differ, Welch and Games–Howell stand beside; for ranks Kruskal–Wallis. Washes and
          weeks are repeated looks at one skein: each skein gives its own slope, and the slopes are the data.
          Every number travels with its interval and its counts, and is rounded only on the way to the screen.
        </p>
        <p>
          Sessions needed come from the non-central t. “Try the plan” makes up thousands of trials from a seed
          and judges them by the very code that judges real ones, noise, looks and lost skeins included.
        </p>
      </MethodSection>
      <MethodSection id="across" title="Across trials">
        <p>
          Trials are not one experiment. What varies within trials is estimated within each, then summarised
          with random effects (REML), an interval by Hartung–Knapp and a prediction interval; every trial is
          shown. What is constant within trials is compared between trials only, each counting once. A table
          of every variable against an outcome hunts for questions to test next; it is never evidence.
        </p>
      </MethodSection>
    </>
  )
}
