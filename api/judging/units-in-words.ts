import { type Counted, patternPlan } from '#api/contract/patterns.ts'
import { sentenceCase } from '#api/words/numbers.ts'
import type { JudgedTrial } from './judged-trial.ts'

/**
 * A session as it stands in a sentence: “session 3”, “bench 2”. A name that a person gave stays as it is.
 *
 * @example
 * [sessionInWords('3', 'session'), sessionInWords('Bench 2', 'bench'), sessionInWords('Monday in May', 'session')] // ['session 3', 'bench 2', 'Monday in May']
 */
export function sessionInWords(label: string, word: string): string {
  const text = label.trim()
  if (text === '') return `a ${word} without a name`
  if (!/\p{L}/u.test(text)) return `${word} ${text}`
  return text.startsWith(`${sentenceCase(word)} `) && /\d$/.test(text)
    ? `${word}${text.slice(word.length)}`
    : text
}

/**
 * A dye lot as it stands in a sentence. Its level’s name is not said twice: “Moss A” of Moss is “lot A”.
 *
 * @example
 * [lotInWords('Moss A', 'Moss'), lotInWords('lot 2', 'Moss'), lotInWords('blue pot', 'Moss')] // ['lot A', 'lot 2', 'lot blue pot']
 */
export function lotInWords(label: string, level: string): string {
  const own = label.startsWith(`${level} `) ? label.slice(level.length + 1) : label
  if (own.trim() === '') return 'a lot without a name'
  return /^lot\b/i.test(own) ? `lot${own.slice(3)}` : `lot ${own}`
}

/** What the sessions of a trial are called, by its pattern: sessions, benches, colours. */
export function sessionWords({ record }: JudgedTrial): Counted {
  return patternPlan(record.trial.pattern).bench.session
}

/** What the blocks of a trial are called: its sessions, its cards, or the skeins that were cut. */
export function blockWords(trial: JudgedTrial): Counted {
  const { block, pattern } = trial.record.trial
  if (block === 'parent') return { one: 'skein', many: 'skeins' }
  return block === 'vessel' ? patternPlan(pattern).bench.vessel : sessionWords(trial)
}
