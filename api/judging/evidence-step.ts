/** What the record says of how a claim was reached; how much was done, not how well it went. */
export type EvidenceFacts = {
  readonly sessions: number
  readonly lots: number
  /** A reference level or a control stood beside. */
  readonly hasReference: boolean
  readonly hasTwinOrBlank: boolean
  /** Locked before the first row that it uses. */
  readonly ruleFirst: boolean
  /** Measured in this trial or for this instrument, not a planning value. */
  readonly noiseKnown: boolean
  /** Judged by eye or yes and no alone: then two graders, or one twice, stand in the place of the twins. */
  readonly graded?: boolean
  readonly protocols: number
  /** Every grade given blind, by two graders. */
  readonly blindByTwo: boolean
  /** Read again on another day, within noise. */
  readonly readAgain: boolean
  readonly outsideReports: number
}

export type EvidenceStep = { readonly step: 'E0' | 'E1' | 'E2' | 'E3' | 'E4'; readonly why: string }

/**
 * The evidence step of a trial, and what the next one would take.
 *
 * @example
 * evidenceStep({ sessions: 1, lots: 1, hasReference: true, hasTwinOrBlank: false, ruleFirst: false, noiseKnown: false, protocols: 1, blindByTwo: false, readAgain: false, outsideReports: 0 }).step // 'E0'
 */
export function evidenceStep(facts: EvidenceFacts): EvidenceStep {
  if (facts.outsideReports > 0)
    return { step: 'E4', why: 'an outside laboratory’s report is attached, not checked by us' }
  const first = facts.sessions >= 1 && facts.hasReference && facts.hasTwinOrBlank
  const units = Math.max(facts.sessions, facts.lots)
  const second = facts.hasReference && units >= 3 && facts.ruleFirst && facts.noiseKnown
  const third = second && facts.lots >= 5 && facts.protocols >= 2 && facts.blindByTwo && facts.readAgain
  if (third)
    return {
      step: 'E3',
      why: 'five or more lots, two protocols, every grade blind by two graders, read again',
    }
  if (second)
    return {
      step: 'E2',
      why: `${facts.lots >= 3 && facts.sessions < 3 ? 'three or more lots' : 'three or more sessions'}, rule first, ${facts.graded ? 'graded twice within half a step' : 'measuring error known'}`,
    }
  const missing = missingFor(facts, units)
  if (first)
    return { step: 'E1', why: `one session or more with a reference and a twin or blank; for E2: ${missing}` }
  return { step: 'E0', why: `for E2: ${missing}` }
}

function missingFor(facts: EvidenceFacts, units: number): string {
  const missing: string[] = []
  if (!facts.hasReference) missing.push('a reference or control')
  if (units < 3) missing.push('three sessions or lots')
  if (!facts.ruleFirst) missing.push('the rule locked before the first reading')
  if (!facts.noiseKnown)
    missing.push(
      facts.graded
        ? 'a second grading of the same skeins, within half a step'
        : 'an unwashed twin measured again, so that the measuring error is known',
    )
  return missing.join(', ') || 'a twin or blank'
}
