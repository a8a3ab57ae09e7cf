import { isVariable } from '#api/contract/bounds.ts'
import type { Sheet } from '#api/contract/evidence.ts'
import type { Finding, LevelFinding, Step } from '#api/contract/finding.ts'
import { outcomeKind } from '#api/contract/outcomes.ts'
import { gradeNumber, gradeText } from '#api/science/fastness/grades.ts'
import { counted, figure } from '#api/words/numbers.ts'
import { outcomeInSentence } from '#api/words/outcomes.ts'
import type { ExposureRecord, ViewingRecord } from '#db/trial-record.ts'
import { asDone } from './as-done.ts'
import { viewedUnder } from './viewed-under.ts'

type Held = { readonly key: string; readonly value: string | number; readonly plusMinus?: number | undefined }

/** The claim of a finding: what was tested, on how many, the worst result and what was not tested. */
export function sheetOfFinding(
  finding: Finding,
  {
    held,
    bases,
    parts,
    exposures,
    viewings,
  }: {
    held: readonly Held[]
    bases: readonly string[]
    /** Every part of a finding of all together; else the finding itself. */
    parts: readonly Finding[]
    /** Of the vessels that its skeins lay in, and of the readings of its skeins. */
    exposures: readonly ExposureRecord[]
    viewings: readonly ViewingRecord[]
  },
): Sheet {
  const { verdict } = finding
  const whole = parts.length > 1
  return {
    title: finding.question,
    headline: verdict?.headline ?? 'No verdict yet.',
    lead: verdict?.lead ?? finding.waitsFor ?? '',
    answer: verdict?.answer ?? 'not-settled',
    what: whatInWords(finding, { held, bases, parts }),
    test: testInWords(finding, exposures),
    viewedUnder: viewedUnder(viewings),
    howMany: parts.map(howMany).join(' '),
    worst: parts.map(worstInWords).join(' '),
    alsoTried: whole ? '' : (finding.within?.others ?? []).map(({ headline }) => headline).join(' '),
    notTested: capital(`${finding.notTested.join(', ')}.`),
    evidence: finding.evidenceStep,
    rule: finding.ruleInWords,
    method: [...finding.method],
    cautions: finding.cautions.map((caution) => `${caution.title}. ${caution.text}`),
    invented: finding.invented,
  }
}

function whatInWords(
  { factor, levels, title, within }: Finding,
  { held, bases, parts }: { held: readonly Held[]; bases: readonly string[]; parts: readonly Finding[] },
): string {
  const names = parts.flatMap((part) => part.within?.label ?? [])
  const only = within
    ? [parts.length > 1 ? `${within.factor}: ${names.join(', ')}` : `${within.spokenOf} only`]
    : []
  const others = bases.filter((base) => base !== within?.label)
  const same = held.map(({ value }) => String(value))
  const subject = [...new Set([...only, ...others, ...same])].join('; ') || title
  const tried = factor ? `${inSentence(factor)}: ${levels.map((level) => level.tick).join(', ')}` : ''
  const sentence = /[.?!]$/.test(subject) ? subject : `${subject}.`
  return capital(tried ? `${sentence} Tried, ${tried}.` : sentence)
}

/** The test by its name, and how it was done, as recorded: the numbers of a protocol are plans, and never printed as done. */
function testInWords({ outcome }: Finding, exposures: readonly ExposureRecord[]): string {
  if (!outcome) return 'Nothing was tested yet.'
  const axes = Object.keys(outcome.wear)
  if (axes.length === 0) return `${outcome.label}, read without washing or light.`
  const codes = axes.map((axis) => axis.replace(' days', ''))
  const done = codes.map((code) => `${codes.length > 1 ? `${code}: ` : ''}${asDone(code, exposures)}`)
  const near = codes.length === 1 ? `protocol ${codes[0]}` : `protocols ${codes.join(', ')}`
  return capital(
    `${outcome.wearInWords}. As done: ${done.join('. ')}. A home test near ${near} of this tool.`,
  )
}

function howMany(finding: Finding): string {
  const { counts, verdict, skeins, within } = finding
  const lost = skeins.filter((skein) => skein.status === 'lost')
  const number = (n: number, one: string) => counted(n, { one, many: `${one}s` })
  const readings = counts.readings === 0 ? '' : `, ${number(counts.readings, 'reading')}`
  const where = within ? `${within.spokenOf}, in all ` : 'In all '
  const inAll = `${where}${number(counts.skeins, 'skein')} from ${number(counts.vessels, 'vessel')} in ${number(counts.sessions, 'session')}${readings}; `
  const losses =
    lost.length === 0
      ? 'none lost.'
      : `${lost.length} lost: ${lost.map((skein) => `${skein.code} (${skein.lostReason ?? 'no reason given'})`).join(', ')}.`
  return `${verdict ? `${verdict.counts} ` : ''}${inAll}${losses}`
}

/** The worst that was seen: at the level of the claim, or of everything that fails where each is judged by itself. */
function worstInWords(finding: Finding): string {
  const { verdict, steps } = finding
  const failing = steps.filter((it) => !it.reference && !it.afterStop && it.answer === 'does-not-hold')
  if (verdict?.levelId != null || failing.length < 2) return worstAt(finding, undefined)
  return failing.map(({ levelId }) => worstAt(finding, levelId)).join(' ')
}

/** At one level; where none is named, at that of the claim, or where nothing holds at the one that was judged last. */
function worstAt(finding: Finding, levelId: string | undefined): string {
  const { verdict, levels, steps, skeins, outcome, within } = finding
  const stopped = steps.find((it) => !it.reference && !it.afterStop && it.answer !== 'holds')
  const level = levels.find(
    (it) =>
      it.id ===
      (levelId ?? verdict?.levelId ?? verdict?.subjectId ?? stopped?.levelId ?? steps.at(0)?.levelId),
  )
  if (!level || !outcome) return 'Nothing was read yet.'
  const where = within ? `${within.spokenOf}, at` : 'At'
  const mine = skeins.filter(
    (skein) => skein.levelId === level.id && skein.status !== 'lost' && skein.value !== null,
  )
  const step = steps.find((it) => it.levelId === level.id)
  const parts = [
    ...worstValue(
      mine.map((skein) => skein.value ?? 0),
      finding,
    ),
    ...worstGrade(mine.map((skein) => skein.grade)),
    ...(step?.limits ?? []).map((limit) => `${limit.label} ${limit.worstText}`),
  ]
  if (parts.length === 0) return step ? `${level.words}: ${step.says}` : 'Nothing was read yet.'
  return `${where} ${level.words}: ${parts.join(', ')}.`
}

function worstValue(values: readonly number[], { outcome, rule }: Finding): string[] {
  // The worst grade of each test is said by its limit.
  if (values.length === 0 || !outcome || isGraded(outcome)) return []
  const larger = rule?.conditions.some(
    (it) => it.outcome === outcome.key && it.direction === 'larger is better',
  )
  const worst = larger ? Math.min(...values) : Math.max(...values)
  return [`${outcomeInSentence(outcome.key)} ${figure(worst)}${outcome.unit ? ` ${outcome.unit}` : ''}`]
}

function worstGrade(grades: readonly (string | null)[]): string[] {
  const known = grades.filter((grade): grade is string => grade !== null)
  if (known.length === 0) return []
  return [`change grade ${known.reduce((a, b) => (gradeNumber(a) <= gradeNumber(b) ? a : b))}`]
}

export type SheetRow = {
  readonly level: LevelFinding
  readonly bySession: readonly string[]
  readonly mean: string
  readonly extra: string
  readonly limits: Step['limits']
  readonly chosen: boolean
}

/** The table of a sheet: a row for each level, a column for each session, from the highest level down. */
export function sheetRows(finding: Finding): SheetRow[] {
  const graded = finding.outcome !== null && isGraded(finding.outcome)
  return [...finding.levels].reverse().map((level) => {
    const step = finding.steps.find((it) => it.levelId === level.id)
    return {
      level,
      bySession: finding.sessions.map((session) => {
        const mine = finding.skeins.filter(
          (skein) => skein.levelId === level.id && skein.sessionId === session.id,
        )
        const values = mine
          .filter((skein) => skein.status !== 'lost' && skein.value !== null)
          .map((skein) => (graded ? gradeText(skein.value ?? 0) : figure(skein.value ?? 0)))
        const lost = mine.some((skein) => skein.status === 'lost')
        return values.length > 0 ? values.join(', ') : lost ? 'lost' : '–'
      }),
      mean: level.mean === null ? '–' : figure(level.mean),
      extra: step?.reference
        ? 'reference'
        : step?.extra === null || step?.extra === undefined || step.lower === null || step.upper === null
          ? '–'
          : `${figure(step.extra)} (${figure(step.deciding?.lower ?? step.lower)} to ${figure(step.deciding?.upper ?? step.upper)})`,
      limits: step?.limits ?? [],
      chosen: level.id === finding.verdict?.levelId,
    }
  })
}

/** Grades are in order and no more: none of them is averaged, and none has an interval. */
export const isGraded = ({ key }: { readonly key: string }): boolean => outcomeKind(key).scale === 'grade'

/** Our own names are lower case inside a sentence; a person’s own stay as they are written. */
const inSentence = ({ key, label }: { readonly key: string; readonly label: string }) =>
  isVariable(key) ? label.charAt(0).toLowerCase() + label.slice(1) : key

const capital = (words: string) => words.charAt(0).toUpperCase() + words.slice(1)
