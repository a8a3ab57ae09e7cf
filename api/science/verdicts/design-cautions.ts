import { alwaysTheSame } from './always-the-same.ts'
import { hasResult } from './counts-of-levels.ts'
import { counted, listed, percent, sentenceCase } from './figure.ts'
import type { Judged } from './judged.ts'
import { fewestBlocks } from './least-level-that-holds.ts'
import type { Caution } from './trial-verdict.ts'
import { blockWords, shortOf, vesselWords } from './words-of-trial.ts'

/**
 * What the way the trial was laid out does not allow to be said.
 *
 * @example
 * const trial = { rows: [], counts: [], oneUnit: [], unit: { kind: 'vessel', joined: [] }, words: { level: String } }
 * designCautions({ ...trial, sessionsIn: 2, look: 1, rule: { plannedSessions: 2 } })[0] // { kind: 'few-sessions', title: '2 sessions are too few' }
 */
export function designCautions(it: Judged): Caution[] {
  return [...sessionCautions(it), ...unitCautions(it), ...tiedCautions(it), ...missingLevels(it)]
}

function sessionCautions({ sessionsIn, rule, words, look, result }: Judged): Caution[] {
  const cautions: Caution[] = []
  const block = blockWords(words)
  if (sessionsIn < fewestBlocks)
    cautions.push({
      kind: 'few-sessions',
      title: `${sentenceCase(counted(sessionsIn, block))} ${sessionsIn === 1 ? 'is' : 'are'} too few`,
      text: 'Fewer than three never make a claim.',
    })
  if (sessionsIn < rule.plannedSessions)
    cautions.push({
      kind: 'plan-not-done',
      title: 'The plan is not done',
      text: `The verdict comes when all ${rule.plannedSessions} planned ${block.many} are in. Looking earlier and stopping when it suits makes false “holds” more likely.`,
    })
  if (sessionsIn > rule.plannedSessions)
    cautions.push({
      kind: 'beyond-plan',
      title: 'More than was planned',
      text: `${sentenceCase(counted(sessionsIn, block))} are in, and the rule was locked for ${rule.plannedSessions}. What is added after a look needs a new edition of the rule.`,
    })
  if (look > 1)
    cautions.push({
      kind: 'second-look',
      title: look === 2 ? 'A second look' : `Look ${look}`,
      text: `${sentenceCase(block.many)} were added after an answer that was not settled, so the limits are at ${percent(result.confidence)}.`,
    })
  return cautions
}

function unitCautions({
  sessionIsLevel,
  oneUnit,
  unit,
  counts,
  words,
  joinedBlocks,
  rule,
}: Judged): Caution[] {
  const block = blockWords(words)
  if (sessionIsLevel)
    return [
      {
        kind: 'session-is-level',
        title: `A whole ${block.one} for each level`,
        text: `Each ${block.one} held one level only. What was special about that day cannot be told from the level, whatever the figures say.`,
      },
    ]
  const cautions: Caution[] = []
  const single = counts.filter((count) => oneUnit.includes(String(count.level)))
  if (single.length > 0) {
    const thing = unit.kind === 'vessel' ? vesselWords(words).one : unit.kind
    const skeins = single.reduce((sum, count) => sum + count.skeins, 0)
    cautions.push({
      kind: 'one-unit',
      title: `One ${thing} is one unit`,
      text: `${sentenceCase(listed(single.map((count) => shortOf(words, count.level))))}: ${counted(skeins, { one: 'skein', many: 'skeins' })}, but one unit for the level in the whole trial. Nothing can be claimed about it.`,
    })
  }
  if (unit.joined.length > 0)
    cautions.push({
      kind: 'shared-later',
      title: 'Skeins shared a vessel afterwards',
      text: `Skeins of one level shared a later vessel, such as a wash jar, with no other level in it, so they count as one unit.${joinedBlocks && rule.method === 'model' ? ' The model cannot see that; the paired comparison is used.' : ''}`,
    })
  return cautions
}

function tiedCautions({ rows, words }: Judged): Caution[] {
  return alwaysTheSame(rows.filter(hasResult)).map(({ words: thing, levels }) => ({
    kind: 'always-same',
    title: `Always the same ${thing}`,
    text: `${sentenceCase(listed(levels.map((level) => shortOf(words, level))))} always had the same ${thing}, and others had another. What comes from that cannot be told from the level.`,
  }))
}

function missingLevels({ rows, words, rule, counts }: Judged): Caution[] {
  const of = rule.block === 'parent' ? 'parent' : 'session'
  const blocks = new Map<string, Set<string>>()
  for (const row of rows.filter(hasResult)) {
    const name = of === 'parent' ? (row.parent ?? row.skein) : row.session
    blocks.set(name, (blocks.get(name) ?? new Set()).add(String(row.level)))
  }
  const lacking = [...blocks].flatMap(([name, levels]) => {
    const missing = counts.filter((count) => count.planned > 0 && !levels.has(String(count.level)))
    return missing.length === 0
      ? []
      : [`${name} has no ${listed(missing.map((count) => shortOf(words, count.level)))}`]
  })
  if (lacking.length === 0) return []
  return [
    {
      kind: 'level-missing',
      title: 'Not every level is everywhere',
      text: `${sentenceCase(lacking.slice(0, 5).join('; '))}${lacking.length > 5 ? `; and ${lacking.length - 5} more` : ''}. A comparison uses only what holds both levels.`,
    },
  ]
}
