import { figure } from './figure.ts'
import type { LadderMethod, LadderVerdict } from './level-rows.ts'
import type { Alternative, TrialWords } from './trial-verdict.ts'
import { verdictInWords } from './verdict.ts'
import { shortOf } from './words-of-trial.ts'

const names: Readonly<Record<LadderMethod, string>> = {
  paired: 'Paired differences within sessions',
  model: 'The model with sessions kept in',
  pooled: 'The comparison without sessions',
}

/**
 * The result by the method that the rule does not name: shown beside, with a sentence when the two disagree.
 *
 * @example
 * const result = { method: 'paired', verdict: 'holds', least: 35, steps: [] }
 * const model = { method: 'model', verdict: 'holds', least: 35, steps: [{ level: 35, extra: 0.02, upper: 0.55 }] }
 * otherMethod(result, () => model, { level: String }).sentence // 'The model with sessions kept in gives 0.02 with an upper limit of 0.55, and agrees.'
 */
export function otherMethod(
  result: LadderVerdict,
  by: (method: LadderMethod) => LadderVerdict,
  words: TrialWords,
): Alternative | undefined {
  if (result.method === 'pooled') return undefined
  const other = by(result.method === 'paired' ? 'model' : 'paired')
  const agrees = other.verdict === result.verdict && other.least === result.least
  return {
    method: other.method,
    verdict: other.verdict,
    least: other.least,
    steps: other.steps,
    agrees,
    sentence: sentenceOf(result, other, { agrees, words }),
  }
}

function sentenceOf(
  result: LadderVerdict,
  other: LadderVerdict,
  { agrees, words }: { readonly agrees: boolean; readonly words: TrialWords },
): string {
  const subject = result.least ?? result.steps[0]?.level
  const step = other.steps.find((it) => it.level === subject)
  const name = names[other.method]
  if (step?.extra === undefined || step.upper === undefined)
    return `${name} ${other.method === 'paired' ? 'give' : 'gives'} no answer here: ${step?.unavailable ?? 'no level below the reference was tried.'}`
  const found = `${name} ${other.method === 'paired' ? 'give' : 'gives'} ${figure(step.extra)} with an upper limit of ${figure(step.upper)}`
  if (agrees) return `${found}, and ${other.method === 'paired' ? 'agree' : 'agrees'}.`
  const theirs =
    other.least === undefined
      ? verdictInWords(other.verdict)
      : `${shortOf(words, other.least)} as the least that holds`
  return `${found}, and would say: ${theirs}. The rule names the method, so its answer stands.`
}
