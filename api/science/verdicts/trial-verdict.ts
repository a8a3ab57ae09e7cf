import type { UnitKind } from '../design/unit-of-factor.ts'
import type {
  Direction,
  LadderMethod,
  LadderStep,
  LadderWindow,
  Level,
  SideLimit,
  SideResult,
} from './level-rows.ts'
import type { Verdict } from './verdict.ts'

/** One skein of a trial as the verdict needs it. Names of sessions, vessels and skeins are each their own in the trial. */
export type TrialRow = {
  readonly level: Level
  readonly session: string
  /** The vessel in which it was given its level, one filling. */
  readonly vessel: string
  /** What it was cut from; a whole skein is its own parent. */
  readonly parent?: string | undefined
  readonly skein: string
  /** Vessels of later stages up to the outcome, such as its wash jar. */
  readonly later?: readonly string[] | undefined
  /** The thing itself (the blue pot), which may come back in other sessions. */
  readonly equipment?: string | undefined
  readonly place?: string | undefined
  /** Rank in the order of working, from 1. */
  readonly drawnOrder?: number | undefined
  readonly date?: string | undefined
  readonly person?: string | undefined
  /** The result; undefined when there is none (yet). */
  readonly value: number | undefined
  /** Why the skein was lost, when it was. */
  readonly lost?: string | undefined
  readonly side?: Readonly<Record<string, number | undefined>> | undefined
  /** Readings behind the value, and spots in each; only counted. */
  readonly readings?: number | undefined
  readonly spots?: number | undefined
}

/** The locked rule. */
export type TrialRule = {
  readonly margin: number
  /** One-sided; 0.95 unless given. */
  readonly confidence?: number | undefined
  readonly direction?: Direction | undefined
  /** `paired` unless given. */
  readonly method?: LadderMethod | undefined
  readonly plannedSessions: number
  /** 1 for the first look. Each later look, after "not settled", has half the doubt of the one before: 97.5 % for the second. */
  readonly look?: number | undefined
  readonly limits?: readonly SideLimit[] | undefined
  readonly reference?: Level | undefined
  readonly order?: readonly Level[] | undefined
  /** What holds more than one level and is compared within; `session` unless given. */
  readonly block?: 'session' | 'vessel' | 'parent' | undefined
  /** SD of the differences between sessions that was planned for. */
  readonly sdPlanned?: number | undefined
}

/** What unchanged skeins show when they are read again. */
export type TrialNoise = {
  /** Root mean square ΔE00, and the mean ("floor"). */
  readonly rms: number
  readonly floor: number
  /** Readings a skein would need for this margin. */
  readonly readingsNeeded?: number | undefined
  /** Where it comes from, as it stands in a sentence: "the dark twin, read again on four days". */
  readonly from: string
}

export type Counted = { readonly one: string; readonly many: string }

/** The caller's words for what was tried. */
export type TrialWords = {
  /** In the headline: "35 minutes of steam". */
  readonly level: (level: Level) => string
  /** Elsewhere: "35 minutes". */
  readonly short?: ((level: Level) => string) | undefined
  readonly block?: Counted | undefined
  readonly vessel?: Counted | undefined
  /** "extra loss" unless given, and its unit "ΔE00". */
  readonly outcome?: string | undefined
  readonly unit?: string | undefined
  readonly sides?: Readonly<Record<string, SideWords>> | undefined
}

export type SideWords = {
  readonly label: string
  /** A value as it is written, such as "3-4" for 3.5. */
  readonly value?: (value: number) => string
}

export type CautionKind =
  | 'few-sessions'
  | 'plan-not-done'
  | 'beyond-plan'
  | 'second-look'
  | 'not-as-good'
  | 'noise-unknown'
  | 'near-noise'
  | 'noise-hides'
  | 'one-unit'
  | 'session-is-level'
  | 'shared-later'
  | 'always-same'
  | 'level-missing'
  | 'no-result'
  | 'lost'
  | 'loss-by-level'
  | 'side-blank'
  | 'reference-breaks'
  | 'no-spread'
  | 'spreads-differ'
  | 'model'
  | 'stop'
  | 'open-below'
  | 'window'
  | 'methods-disagree'

export type Caution = { readonly kind: CautionKind; readonly title: string; readonly text: string }

export type LevelCount = {
  readonly level: Level
  /** Independent units with a result: what n means. */
  readonly units: number
  readonly vessels: number
  /** Skeins with a result. */
  readonly skeins: number
  readonly sessions: number
  readonly readings: number
  /** Every skein that was meant, with or without a result. */
  readonly planned: number
  readonly lost: readonly { readonly skein: string; readonly reason: string }[]
  /** Neither lost nor with a result. */
  readonly withoutResult: number
}

export type TrialVerdict = {
  readonly verdict: Verdict
  /** The least level that holds; undefined when none below the reference does, or the plan is not done. */
  readonly least: Level | undefined
  /** The level that the headline speaks of. */
  readonly subject: Level | undefined
  readonly reference: Level
  readonly referenceMean: number | undefined
  readonly referenceLimits: readonly SideResult[]
  readonly window: LadderWindow
  readonly steps: readonly LadderStep[]
  readonly unit: UnitKind
  readonly counts: readonly LevelCount[]
  readonly sessionsIn: number
  readonly plannedSessions: number
  readonly look: number
  /** One-sided, as it was used. */
  readonly confidence: number
  readonly cautions: readonly Caution[]
  readonly sentences: { readonly headline: string; readonly lead: string; readonly countsLine: string }
  /** What would settle it, where it is not settled. */
  readonly settle: { readonly sessionsMore?: number; readonly why: string } | undefined
  /** How it was worked out, in words. */
  readonly method: string
  readonly methodUsed: LadderMethod
  readonly alternative: Alternative | undefined
}

/** The other method's result, which is shown beside and decides nothing. */
export type Alternative = {
  readonly method: LadderMethod
  readonly verdict: Verdict
  readonly least: Level | undefined
  readonly steps: readonly LadderStep[]
  readonly agrees: boolean
  readonly sentence: string
}
