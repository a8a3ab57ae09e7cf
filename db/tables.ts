import type { ColumnType, Generated, JSONColumnType } from 'kysely'
import type { base } from '#api/contract/base.ts'
import type { Column, Columns } from '#api/contract/columns.ts'
import type { dye } from '#api/contract/dye.ts'
import type { FrozenBody } from '#api/contract/evidence.ts'
import type { exposure } from '#api/contract/exposure.ts'
import type { Finding } from '#api/contract/finding.ts'
import type { instrument } from '#api/contract/instrument.ts'
import type { outcome } from '#api/contract/outcome.ts'
import type { placement } from '#api/contract/placement.ts'
import type { reading } from '#api/contract/reading.ts'
import type { rinse } from '#api/contract/rinse.ts'
import type { z } from '#api/contract/schema.ts'
import type { session } from '#api/contract/session.ts'
import type { sitting } from '#api/contract/sitting.ts'
import type { skein } from '#api/contract/skein.ts'
import type { stamp } from '#api/contract/stamp.ts'
import type { stock } from '#api/contract/stock.ts'
import type { treatment } from '#api/contract/treatment.ts'
import type { vessel } from '#api/contract/vessel.ts'

/**
 * One interface for each table. Columns are snake case in SQL and camel case here and in the API.
 * Column by column, with meanings and bounds: the migrations; the nouns: DEVELOPERS.md.
 * Names are mapped by CamelCasePlugin with `maintainNestedObjectKeys` and `underscoreBetweenUppercaseLetters`
 * (`waterAlkalinityMgL` is `water_alkalinity_mg_l`).
 */

/** What every row has: an id (the client may choose it), a version for `If-Match`, the server's time of writing. */
type Row = {
  id: Generated<string>
  version: Generated<number>
  createdAt: ColumnType<Date, never, never>
}

type Moment = ColumnType<Date, Date | string, Date | string>
type MaybeMoment = ColumnType<Date | null, Date | string | null | undefined, Date | string | null>
/** JSON goes in as text (JSON.stringify): a driver would make a PostgreSQL array of a JavaScript one. */
type Json<T> = JSONColumnType<T & object, string, string>
type JsonWithDefault<T> = ColumnType<T, string | undefined, string>
type MaybeJson<T> = ColumnType<T | null, string | null | undefined, string | null>

type Shown<C extends Column> = z.output<C['shown']>
type Plain<C extends Column> = C extends { readonly sent: infer Sent extends z.ZodType }
  ? undefined extends z.input<Sent>
    ? null extends Shown<C>
      ? Shown<C>
      : Generated<Shown<C>>
    : Shown<C>
  : Generated<Shown<C>>
type KeptColumn<C extends Column> = {
  plain: Plain<C>
  moment: null extends Shown<C> ? MaybeMoment : Moment
  json: ColumnType<Shown<C>, string | (null extends Shown<C> ? null : never) | undefined, string>
  conditions: JsonWithDefault<Conditions>
}[C['kept']]
/** The columns that a noun of the contract declares, as they are kept. */
type ColumnsOf<Noun extends { readonly columns: Columns }> = {
  [Key in keyof Noun['columns']]: KeptColumn<Noun['columns'][Key]>
}

/** A measured row is never changed; a correction supersedes it, with a reason. */
type Measured = Row & {
  supersedesId: string | null
  reason: string | null
  /** Derived: another row supersedes this one. */
  superseded: Generated<boolean>
}

export type Stage = 'soak' | 'dye' | 'set' | 'rinse' | 'dry' | 'wash' | 'contact' | 'rub' | 'light' | 'remedy'
export type Status = 'planned' | 'done' | 'lost'
/** From protocol to amount: `{}` untouched, `{"W2": 3}` three W2 washes, `{"X1 days": 28}`. */
export type Wear = Record<string, number>
export type Entered = { amount: string | number; unit: string; strengthPercent?: number | undefined }
/** A value in the unit of the table of variables; an amount keeps what was entered beside it. */
export type ConditionValue = number | string | null | { entered: Entered; value: number }
export type Conditions = Record<string, ConditionValue>
export type Held = { key: string; value: string | number; plusMinus?: number | undefined }
export type Spot = { place?: number | undefined; l: number; a: number; b: number }

export interface BaseTable extends Row, ColumnsOf<typeof base> {}

export interface DyeTable extends Row, ColumnsOf<typeof dye> {}

export interface StockTable extends Row, ColumnsOf<typeof stock> {}

export interface RecipeTable extends Row {
  name: string
  colourway: string | null
  edition: Generated<number>
  madeFromTrialId: string | null
  per100g: JsonWithDefault<unknown[]>
  liquorMlPerG: number | null
  tolerances: JsonWithDefault<{ key: string; must: boolean; plusMinus?: number }[]>
}

export type Pattern = 'P0' | 'P1' | 'P2' | 'P3' | 'P4' | 'P5' | 'P6' | 'P7' | 'P8' | 'own'

export interface TrialTable extends Row {
  title: string
  question: string
  expectation: string | null
  pattern: Pattern
  block: Generated<'session' | 'vessel' | 'parent'>
  seed: number | null
  conditions: JsonWithDefault<Conditions>
  held: JsonWithDefault<Held[]>
  invented: Generated<boolean>
  archivedAt: MaybeMoment
  /** From when changes after the first reading are kept in the journal. */
  journalFrom: ColumnType<Date, never, never>
}

export interface FactorTable extends Row {
  trialId: string
  key: string
  stage: Stage
  kind: 'number' | 'category'
  ordered: boolean
  unit: string | null
}

export interface LevelTable extends Row {
  factorId: string
  position: number
  label: string
  value: number | null
  isReference: Generated<boolean>
}

/** One condition of a rule; the verdict engine reads nothing else. */
export type RuleCondition = {
  outcome: string
  fibre?: string | undefined
  wear: Wear
  end: 'low' | 'high'
  against: 'reference' | 'next level' | 'control' | 'standard' | 'none'
  /** What is asked. Rules of the first version named a statistic instead. */
  question?:
    | 'no-worse'
    | 'alike'
    | 'better'
    | 'within-limit'
    | 'to-standard'
    | 'light'
    | 'open-against-covered'
    | 'sees'
    | undefined
  statistic?: 'upper limit' | 'mean' | 'every unit' | 'worst lot' | 'bracket' | undefined
  /** Largest difference that is still accepted; of “better”, the least gain worth having stands in `leastGain`. */
  margin?: number | undefined
  leastGain?: number | undefined
  atLeast?: number | undefined
  atMost?: number | undefined
  direction: 'smaller is better' | 'larger is better'
}

export interface RuleTable extends Row {
  trialId: string
  edition: number
  conditions: Json<RuleCondition[]>
  method: Generated<'paired' | 'model' | 'pooled'>
  plannedSessions: number
  looks: Generated<number>
  confidence: Generated<number>
  lockedAt: MaybeMoment
  reason: string | null
}

export interface SessionTable extends Row, ColumnsOf<typeof session> {}

export interface VesselTable extends Row, ColumnsOf<typeof vessel> {}

export type Role =
  | 'treated'
  | 'blank'
  | 'twin'
  | 'dark twin'
  | 'known good'
  | 'known bleeder'
  | 'companion'
  | 'blue wool'
  | 'standard'
  | 'bled'

export interface SkeinTable extends Row, ColumnsOf<typeof skein> {}

export interface PlacementTable extends Row, ColumnsOf<typeof placement> {}

export interface TreatmentTable extends Row, ColumnsOf<typeof treatment> {}

export type StampKind =
  | 'in'
  | 'lid on'
  | 'steam seen'
  | 'lid opened'
  | 'out'
  | 'cooled'
  | 'added'
  | 'deviation'
  | 'lost'
  | 'note'

export interface StampTable extends Measured, ColumnsOf<typeof stamp> {}

export interface RinseTable extends Measured, ColumnsOf<typeof rinse> {}

export type Protocol =
  | 'W1'
  | 'W2'
  | 'W3'
  | 'W4'
  | 'W5'
  | 'W6'
  | 'X0'
  | 'X1'
  | 'X2'
  | 'X3'
  | 'X4'
  | 'rub dry'
  | 'rub wet'

export interface ExposureTable extends Measured, ColumnsOf<typeof exposure> {}

export type Method = 'instrument' | 'photo' | 'eye'

export interface InstrumentTable extends Row, ColumnsOf<typeof instrument> {}

export interface SittingTable extends Row, ColumnsOf<typeof sitting> {}

export interface ReadingTable extends Measured, ColumnsOf<typeof reading> {}

export interface OutcomeTable extends Measured, ColumnsOf<typeof outcome> {}

export type Basis = 'own' | 'covered' | 'twin' | 'standard' | 'companion'

/** Derived: a reading against its baseline, its covered half, its twin, the standard or the unstained companion. */
export interface ChangeTable extends Row {
  readingId: string
  againstIds: string[]
  basis: Basis
  dL: number
  dA: number
  dB: number
  dC: number
  dH: number
  de76: number
  de00: number
  deF: number
  grade: string
}

/** Derived: one row for each skein × kind × fibre × basis × wear. All findings read this table. */
export interface ResultTable extends Row {
  trialId: string
  skeinId: string
  /** The session of the vessel at the factor's stage, else of the earliest vessel. */
  sessionId: string | null
  /** From stage to the id of the vessel that the skein lay in. */
  vessels: JsonWithDefault<Partial<Record<Stage, string>>>
  lotId: string | null
  parentId: string | null
  kind: string
  fibre: Generated<string>
  basis: Generated<string>
  wear: JsonWithDefault<Wear>
  /** The wear as text, keys in order: `W2=3`, `W2=5,rub wet=10`, empty for untouched. */
  wearKey: Generated<string>
  /** The amount, where the wear is of one protocol. */
  wearAmount: number | null
  value: number
  text: string | null
  dL: number | null
  dA: number | null
  dB: number | null
  readingsN: number
  spotsN: number
  settings: Generated<string>
  resolved: JsonWithDefault<Conditions>
  firstRecordedAt: Moment
}

export interface VerdictTable extends Row {
  trialId: string
  ruleEdition: number
  look: number
  /** The level of the other factor that it speaks of, where there is one. */
  withinLevelId: string | null
  /** The part that it speaks of: ids of levels, joined by “+”; “” is of the whole trial. */
  stratum: string
  sessionsN: number
  body: Json<Finding>
  declaredAt: ColumnType<Date, Date | string | undefined, never>
}

export interface EvidenceSheetTable extends Row {
  trialIds: string[]
  body: Json<FrozenBody>
  sha256: string
  step: 'E0' | 'E1' | 'E2' | 'E3' | 'E4'
  madeAt: ColumnType<Date, Date | string | undefined, never>
  shareHash: string | null
  sharedAt: MaybeMoment
  withdrawnAt: MaybeMoment
  supersededBy: string | null
}

export interface AttachmentTable extends Row {
  ownerKind: string
  ownerId: string
  mediaType: string
  bytes: Uint8Array
  sha256: string
  width: number | null
  height: number | null
  kind: 'photo' | 'report'
}

export type JournalAction = 'added' | 'changed' | 'removed' | 'corrected'

/** What was changed of a trial after its first reading; rows are added, never changed. */
export interface JournalTable {
  id: string
  trialId: string
  at: ColumnType<Date, never, never>
  who: string | null
  why: string | null
  noun: string
  recordId: string
  action: JournalAction
  /** The whole record, as a reply shows it. */
  before: MaybeJson<Record<string, unknown>>
  after: MaybeJson<Record<string, unknown>>
  skeinIds: string[]
}

export interface SettingTable extends Row {
  key: string
  value: Json<Record<string, unknown>>
}

export interface TableImportTable extends Row {
  trialId: string
  columns: Json<unknown[]>
  answers: JsonWithDefault<Record<string, unknown>>
  rowsN: number
  keptN: number
  leftOut: JsonWithDefault<unknown[]>
}

export interface Database {
  base: BaseTable
  dye: DyeTable
  stock: StockTable
  recipe: RecipeTable
  trial: TrialTable
  factor: FactorTable
  level: LevelTable
  rule: RuleTable
  session: SessionTable
  vessel: VesselTable
  skein: SkeinTable
  placement: PlacementTable
  treatment: TreatmentTable
  stamp: StampTable
  rinse: RinseTable
  exposure: ExposureTable
  instrument: InstrumentTable
  sitting: SittingTable
  reading: ReadingTable
  outcome: OutcomeTable
  change: ChangeTable
  result: ResultTable
  verdict: VerdictTable
  evidenceSheet: EvidenceSheetTable
  attachment: AttachmentTable
  setting: SettingTable
  tableImport: TableImportTable
  journal: JournalTable
}
