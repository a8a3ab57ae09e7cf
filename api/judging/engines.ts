import type { Question } from '#api/contract/question.ts'
import { judgeAlike } from './alike.ts'
import type { Engine } from './asked.ts'
import { judgeBetter } from './better.ts'
import { judgeLight } from './light.ts'
import { judgeNoWorse } from './no-worse.ts'
import { judgeOpenAgainstCovered } from './open-against-covered.ts'
import { judgeSees } from './sees.ts'
import { judgeToStandard } from './to-standard.ts'
import { judgeWithinLimit } from './within-limit.ts'

/** The one register of what can be asked, and who answers it. A new question is one file and one line here. */
export const engines: Readonly<Record<Question, Engine>> = {
  'no-worse': judgeNoWorse,
  alike: judgeAlike,
  better: judgeBetter,
  'within-limit': judgeWithinLimit,
  'to-standard': judgeToStandard,
  light: judgeLight,
  'open-against-covered': judgeOpenAgainstCovered,
  sees: judgeSees,
}
