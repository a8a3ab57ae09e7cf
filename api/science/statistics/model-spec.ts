/** One row of a table: what stands in each column. Factors are read as text, the response and covariates as numbers. */
export type ModelRow = Readonly<Record<string, unknown>>

/** What is asked of a linear or mixed model. Names are those of columns. */
export type ModelSpec = {
  readonly response: string
  readonly factors?: readonly string[] | undefined
  readonly covariates?: readonly string[] | undefined
  /** `all` is every interaction of the factors, of every order. */
  readonly interactions?: 'none' | 'all' | readonly (readonly string[])[] | undefined
  /** Columns, or `session:vessel` for vessels that are numbered anew in each session. */
  readonly randomIntercepts?: readonly string[] | undefined
  readonly sumsOfSquares?: 'II' | 'III' | undefined
  /** Factors, or `a:b` for their combinations. */
  readonly meansOf?: readonly string[] | undefined
  readonly contrasts?: 'pairwise' | 'reference' | undefined
  readonly reference?: Readonly<Record<string, string>> | undefined
  /** Two-sided confidence of the intervals, between 0 and 1; 0.95 unless said. */
  readonly level?: number | undefined
}

/** A part that has no answer, and why. */
export type Unavailable = { unavailable: string }

export type Coefficient = {
  term: string
  estimate: number
  se: number
  df: number
  t: number
  p: number
  lower: number
  upper: number
}

export type OlsTest = { term: string; df: number; ss: number; F: number; p: number }
export type RemlTest = { term: string; df1: number; df2: number; F: number; p: number }

/** A mean of a level has `level`, one of a combination has `levels`. */
export type MeanName = { level: string } | { levels: Record<string, string> }
export type MarginalMean = { mean: number; se: number; df: number; lower: number; upper: number }

export type Adjusted = 'tukey' | 'dunnett' | 'holm' | 'none'

export type ModelContrast = {
  a: string
  b: string
  difference: number
  se: number
  df: number
  t: number
  p: number
  lower: number
  upper: number
  adjusted: Adjusted
  /** The same for this pair alone, as if no other had been looked at. */
  single: { p: number; lower: number; upper: number }
}

export type Named<Key, Value> = Key & (Value | (Unavailable & Partial<Value>))

export type ModelAnswer = {
  cautions: string[]
  rows: number
  means: Record<string, Named<MeanName, MarginalMean>[] | Unavailable>
  contrasts: Record<string, Named<{ a: string; b: string }, ModelContrast>[] | Unavailable>
  emptyCells: Record<string, string>[]
  aliased: string[]
  confounded: string[]
}

export type OlsReply = ModelAnswer & {
  method: 'ols'
  table: Named<{ term: string }, OlsTest>[] | Unavailable
  residual: { df: number; ss: number; sd: number } | (Unavailable & { df?: number; ss?: number })
  coefficients: Named<{ term: string }, Coefficient>[] | Unavailable
  rSquared: number | Unavailable
}

export type RemlReply = ModelAnswer & {
  method: 'reml'
  fixed: Named<{ term: string }, Coefficient>[] | Unavailable
  table: Named<{ term: string }, RemlTest>[] | Unavailable
  components: Named<{ group: string }, { variance: number; sd: number; groups: number }>[]
  residual: { variance: number; sd: number } | Unavailable
  remlCriterion: number | Unavailable
  singular: boolean
}

export type ModelReply = OlsReply | RemlReply
