import { MethodSection } from '#web/pages/method/method-section.tsx'

/** The three answers, the looks, the limits. */
export function Answers() {
  return (
    <>
      <MethodSection id="answers" title="The steps and the three answers">
        <p>
          “Short enough” is a no-worse-than question. The margin, the largest extra loss that you would still
          accept, is fixed and locked before the readings. From the reference downwards each level gets one of
          three answers:
        </p>
        <ul>
          <li>
            <strong>holds</strong>: the upper limit of its extra loss, raw and net, is under the margin, and
            every side limit was recorded and met in every session;
          </li>
          <li>
            <strong>does not hold</strong>: its lower limit is over the margin, or a side limit was broken in
            any session;
          </li>
          <li>
            <strong>not settled</strong>: all else, as with fewer than three sessions, a blank side result, or
            no spread at all. Then it says about how many sessions more would settle it.
          </li>
        </ul>
        <p>
          We stop at the first level that does not hold; what lies below is shown and never claimed. The order
          is fixed beforehand, so no correction for several comparisons is due (Hsu and Berger 1999). Limits
          are one-sided at 95 %, by t on the differences within sessions; the interval shown is the two-sided
          90 % one, whose ends they are. “No difference found” is never “as good as”.
        </p>
      </MethodSection>
      <MethodSection id="looks" title="Looks">
        <p>
          The verdict is given when the planned sessions are in. Before that it is not settled, and the
          picture grows. To look after every session and stop when one likes the answer would let too many
          levels hold (see the study below). After “not settled” sessions may be added by a new edition of the
          rule: its limits are then at 97.5 %, and the finding says “second look”.
        </p>
      </MethodSection>
      <MethodSection id="limits" title="Side limits and the window">
        <p>
          A level must do more than keep its colour. Staining, rinses until clear, felting and handle may each
          have a limit, judged in every session and by its worst result: a grade is a place in an order and
          has no mean. The reference must meet the limits too.
        </p>
        <p>
          Felting bounds from above: it is read upwards, and gives the other end. What lies between is the
          window. It may be empty, and that is an answer.
        </p>
        <p>
          An acid ladder is judged by described limits instead: dye left in every session, and mean L* against
          the next level. That is a rule of the trade, not a test; the limit of the difference stands beside
          it.
        </p>
      </MethodSection>
    </>
  )
}
