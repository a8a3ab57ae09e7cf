import { counted, figure, margin, sentenceCase } from '#api/words/numbers.ts'
import type { ToStandard } from './batches-to-standard.ts'

const units = { one: 'batch', many: 'batches' }

/** Why batches come out like the standard, do not, or why it is not settled: one sentence. */
export function reasonOfBatches(
  { because, worst, nextUpTo }: ToStandard,
  {
    name,
    each,
    tolerance,
    missing,
    n,
  }: { name: string; each: 'mean' | 'every'; tolerance: number; missing: number; n: number },
): string {
  const allowed = margin(tolerance)
  const off = figureBeside(each === 'mean' ? worst.mean : worst.worst.value, tolerance)
  const what =
    each === 'mean'
      ? `${sentenceCase(worst.name)} came out`
      : `Skein ${worst.worst.skein} of ${worst.name} is`
  const all = `${sentenceCase(counted(n, units))} of ${name}`
  switch (because) {
    case 'off':
      return `${what} ${off} from the standard; ${allowed} was allowed.`
    case 'maybe off':
      return `${what} ${off} from the standard, which may be the measuring alone; ${allowed} was allowed.`
    case 'few':
      return `${all} ${n === 1 ? 'is' : 'are'} within ${allowed} of the standard: three or more are needed.`
    case 'missing':
      return `${counted(missing, { one: 'skein', many: 'skeins' })} of ${name} ${missing === 1 ? 'is' : 'are'} not measured yet.`
    case 'copied':
      return `${all} are exactly as far from the standard as each other: were values copied?`
    case 'next':
      return `${all} are within ${allowed} of the standard, but the next may be ${figureBeside(nextUpTo ?? 0, tolerance)} from it.`
    default:
      return each === 'mean'
        ? `${all} are within ${allowed} of the standard, the worst ${off}; the next should come within ${figureBeside(nextUpTo ?? 0, tolerance)}.`
        : `Every skein of ${counted(n, units)} of ${name} is within ${allowed} of the standard, the worst ${off}.`
  }
}

/**
 * A distance with one place, or as many as tell it from the tolerance.
 *
 * @example
 * [figureBeside(0.4333, 2), figureBeside(2.04, 2)] // ['0.4', '2.04']
 */
export function figureBeside(value: number, tolerance: number): string {
  const places = [1, 2, 3].find((it) => value === tolerance || figure(value, it) !== figure(tolerance, it))
  return figure(value, places ?? 4)
}
