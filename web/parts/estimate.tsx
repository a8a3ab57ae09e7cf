import './estimate.css'
import { spreadLabels } from '#api/science/pictures/spread-labels.ts'
import { figure, fromTo } from '#web/form/number-words.ts'

export type EstimateProps = {
  readonly value: number
  /** Its interval; without one the number would travel alone, so it is not optional. */
  readonly low: number
  readonly high: number
  readonly decimals?: number
}

/** A number with its interval: `<Estimate value={0.02} low={-0.47} high={0.5} />` is 0.02 (−0.47 to 0.50). */
export function Estimate({ value, low, high, decimals = 2 }: EstimateProps) {
  return (
    <span class="estimate">
      {figure(value, decimals)} <span class="estimate-interval">({fromTo(low, high, decimals)})</span>
    </span>
  )
}

export type EstimateRulerProps = EstimateProps & {
  /** Drawn dashed. */
  readonly margin?: { readonly at: number; readonly label: string }
  /** In accent, as what the tool concluded. */
  readonly chosen?: boolean
}

/** The same on a ruler, with nought and the margin. The sentence beside it says the numbers, so it has no name of its own. */
export function EstimateRuler({
  value,
  low,
  high,
  decimals = 2,
  margin,
  chosen = false,
}: EstimateRulerProps) {
  const ends = [low, high, 0, ...(margin === undefined ? [] : [margin.at])]
  const least = Math.min(...ends)
  const span = Math.max(...ends) - least || 1
  const place = (at: number): number => 9 + (82 * (at - least)) / span
  const colour = chosen ? 'var(--accent)' : 'var(--ink)'
  const labels = [
    { at: low, words: figure(low, decimals), strength: '' },
    { at: 0, words: '0', strength: 'soft' },
    ...(margin === undefined ? [] : [{ at: margin.at, words: margin.label, strength: 'strong' }]),
    { at: high, words: figure(high, decimals), strength: '' },
  ].toSorted((one, other) => one.at - other.at)
  const apart = spreadLabels(
    labels.map(({ at }) => ({ at: place(at), size: 14 })),
    { from: 0, to: 100 },
  )
  return (
    <svg class="estimate-ruler" width="100%" height="74" aria-hidden="true">
      <line x1={`${place(0)}%`} x2={`${place(0)}%`} y1="6" y2="42" stroke="var(--hair)" />
      {margin === undefined ? null : (
        <line
          x1={`${place(margin.at)}%`}
          x2={`${place(margin.at)}%`}
          y1="6"
          y2="42"
          stroke="var(--ink)"
          stroke-width="1.75"
          stroke-dasharray="5 3"
        />
      )}
      <g stroke={colour} stroke-width="2">
        <line x1={`${place(low)}%`} x2={`${place(high)}%`} y1="24" y2="24" />
        <line x1={`${place(low)}%`} x2={`${place(low)}%`} y1="18" y2="30" />
        <line x1={`${place(high)}%`} x2={`${place(high)}%`} y1="18" y2="30" />
      </g>
      <circle cx={`${place(value)}%`} cy="24" r="5" fill={colour} />
      {labels.map(({ words, strength }, index) => (
        <text
          key={words}
          class={`estimate-ruler-label ${strength}`}
          x={`${apart[index]}%`}
          y="64"
          text-anchor="middle"
        >
          {words}
        </text>
      ))}
    </svg>
  )
}
