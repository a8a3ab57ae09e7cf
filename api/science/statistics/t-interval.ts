import { studentT, studentTQuantile } from './student-t.ts'
import { tooLarge, type Unavailable } from './unavailable.ts'

/** An estimate that is normally distributed about the truth, its spread estimated too. */
export type Estimated = { readonly estimate: number; readonly se: number; readonly df: number }

export type TInterval = {
  readonly t: number
  readonly p: number
  readonly lower: number
  readonly upper: number
}

/**
 * Student's t for "is it 0?" and the interval that goes with it; `level` is the two-sided confidence.
 *
 * @example
 * tInterval({ estimate: 5, se: 1, df: 6 }, { level: 0.95 }) // { t: 5, p: 0.00245, lower: 2.553, upper: 7.447 }
 */
export function tInterval(
  { estimate, se, df }: Estimated,
  { level }: { readonly level: number },
): TInterval | Unavailable {
  const t = estimate / se
  const reach = -studentTQuantile((1 - level) / 2, df) * se
  if (!(Number.isFinite(t) && Number.isFinite(reach))) return tooLarge
  return {
    t,
    p: Math.min(1, 2 * studentT(-Math.abs(t), df).lower),
    lower: estimate - reach,
    upper: estimate + reach,
  }
}
