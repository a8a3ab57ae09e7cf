import { figure, sentenceCase } from '#api/words/numbers.ts'
import type { ResultSeen, SkeinRecord } from '#db/trial-record.ts'
import type { Condition } from './condition.ts'
import { resultsFor } from './judged-rows.ts'
import type { JudgedTrial } from './judged-trial.ts'
import { gradeFour } from './light-contrast.ts'
import { limitInWords, testInWords, valueInWords } from './limit-in-words.ts'
import type { Noise } from './noise.ts'
import { unchangedUpTo } from './unchanged-up-to.ts'

export const controlRoles = ['known bleeder', 'known good', 'blank', 'dark twin'] as const
export type ControlRole = (typeof controlRoles)[number]

/** What one control showed. If one is not as it must be, the test did not work. */
export type ControlFound = {
  readonly role: ControlRole
  readonly code: string
  /** Undefined: nothing of it was recorded. */
  readonly ok: boolean | undefined
  /** One sentence. */
  readonly found: string
}

/** Undyed yarn may come out of a test at this grade of staining, and no worse. */
const blankAtLeast = 4.5

/** What colour on another textile shows by. */
const stainingOutcomes: ReadonlySet<string> = new Set(['staining', 'staining dE76', 'bled'])

/**
 * The controls of a trial under its rule’s conditions: a known bleeder must bleed (fail the limit, or “bled”), a known good must
 * pass every limit, a blank must not stain (grade 4-5 or better), a dark twin must not change beyond the measuring error.
 */
export function controlsOf(
  trial: JudgedTrial,
  conditions: readonly Condition[],
  noise: Noise | undefined,
): ControlFound[] {
  return trial.record.skeins.flatMap((skein): ControlFound[] => {
    const role = controlRoles.find((it) => it === skein.role)
    if (role === undefined) return []
    const { ok, found } =
      role === 'dark twin'
        ? darkTwin(trial, skein, { conditions, noise })
        : checks[role](shownBy(trial, skein, testsOf(conditions, role)))
    return [{ role, code: skein.code, ok, found: `${sentenceCase(role)} ${skein.code}: ${found}.` }]
  })
}

type Shown = { readonly test: Condition; readonly value: number | undefined }
type Checked = Pick<ControlFound, 'ok' | 'found'>

const isLimit = ({ question, against, atLeast, atMost }: Condition): boolean =>
  question === 'within-limit' && against === 'none' && (atLeast !== undefined || atMost !== undefined)

/** Where a rule names no limit of staining, any staining that was recorded is looked at. */
const anyStaining: readonly Condition[] = [
  stainTest({ outcome: 'staining', atLeast: blankAtLeast }),
  stainTest({ outcome: 'bled', atMost: 0 }),
]

function stainTest(parts: Pick<Condition, 'outcome' | 'atLeast' | 'atMost'>): Condition {
  const direction = parts.atLeast === undefined ? 'smaller is better' : 'larger is better'
  return {
    question: 'within-limit',
    wear: {},
    end: 'low',
    against: 'none',
    byLot: false,
    direction,
    ...parts,
  }
}

function testsOf(conditions: readonly Condition[], role: ControlRole): readonly Condition[] {
  const limits = conditions.filter(isLimit)
  if (role === 'known good') return limits
  const staining = limits.filter(({ outcome }) => stainingOutcomes.has(outcome))
  return staining.length > 0 ? staining : anyStaining
}

/** What a control and the parts cut from it showed in each test: the worst. */
function shownBy(trial: JudgedTrial, skein: SkeinRecord, tests: readonly Condition[]): Shown[] {
  const family = withParts(trial.record.skeins, skein)
  return tests.map((test) => {
    const results = anyStaining.includes(test)
      ? family.flatMap((it) => trial.resultsOf(it.id)).filter(({ kind }) => kind === test.outcome)
      : valuesIn(trial, test, family)
    const values = results.map(({ value }) => value)
    const worst = test.atLeast === undefined ? Math.max(...values) : Math.min(...values)
    return { test, value: values.length === 0 ? undefined : worst }
  })
}

function valuesIn(trial: JudgedTrial, test: Condition, family: readonly SkeinRecord[]): ResultSeen[] {
  const direction = test.atLeast === undefined ? 'smaller is better' : 'larger is better'
  const results = resultsFor(trial, { ...test, direction })
  return family.flatMap((it) => results.get(it.id) ?? [])
}

function withParts(skeins: readonly SkeinRecord[], skein: SkeinRecord): SkeinRecord[] {
  const parts = skeins.filter((it) => it.cutFromId === skein.id && it.id !== skein.id)
  return [skein, ...parts.flatMap((part) => withParts(skeins, part))]
}

const meets = ({ atLeast, atMost }: Condition, value: number): boolean =>
  (atLeast === undefined || value >= atLeast) && (atMost === undefined || value <= atMost)

const said = ({ test, value }: Shown): string =>
  `${testInWords(test)} ${value === undefined ? 'not recorded' : valueInWords(test.outcome, value)}`

const notRecorded: Checked = { ok: undefined, found: 'not recorded' }

type Recorded = Shown & { readonly value: number }
const recordedOf = (shown: readonly Shown[]): Recorded[] =>
  shown.flatMap(({ test, value }) => (value === undefined ? [] : [{ test, value }]))

const checks = {
  'known bleeder': (shown: readonly Shown[]): Checked => {
    const recorded = recordedOf(shown)
    const bled = recorded.find(({ test, value }) => !meets(test, value))
    if (bled) return { ok: true, found: `${said(bled)}, as it must` }
    const [first] = recorded
    return first ? { ok: false, found: `${said(first)}; it should have bled` } : notRecorded
  },
  'known good': (shown: readonly Shown[]): Checked => {
    const recorded = recordedOf(shown)
    const failing = recorded.find(({ test, value }) => !meets(test, value))
    if (failing) return { ok: false, found: `${said(failing)}; ${limitInWords(failing.test)} was expected` }
    return recorded.length > 0 ? { ok: true, found: shown.map(said).join(', ') } : notRecorded
  },
  blank: (shown: readonly Shown[]): Checked => {
    const own = shown.map(({ test, value }): Shown => {
      if (test.outcome !== 'staining') return { test, value }
      return { value, test: { ...test, atLeast: blankAtLeast } }
    })
    const recorded = recordedOf(own)
    const failing = recorded.find(({ test, value }) => !meets(test, value))
    if (failing) return { ok: false, found: `${said(failing)}; undyed yarn should stain nothing` }
    return recorded.length > 0 ? { ok: true, found: recorded.map(said).join(', ') } : notRecorded
  },
}

/** Its mean ΔE00 after each wear, against what measuring alone shows; the rule’s smallest margin is the most it may be. */
function darkTwin(
  trial: JudgedTrial,
  skein: SkeinRecord,
  { conditions, noise }: { conditions: readonly Condition[]; noise: Noise | undefined },
): Checked {
  const changes = trial
    .resultsOf(skein.id)
    .filter(({ kind, basis }) => kind === 'dE00' && (basis === 'own' || basis === ''))
    .map(({ value }) => value)
  if (changes.length === 0) return notRecorded
  const margins = conditions.flatMap(({ outcome, margin }) =>
    outcome === 'dE00' && margin !== undefined ? [margin] : [],
  )
  const upTo = unchangedUpTo(noise, margins.length === 0 ? gradeFour / 2 : Math.min(...margins))
  const most = Math.max(...changes)
  const ok = most <= upTo
  return {
    ok,
    found: `changed by ${figure(most)}, ${ok ? 'no more than' : 'more than the'} ${figure(upTo)} that measuring alone can show`,
  }
}
