import { aceticInBath, alkalinityInMoles } from '#api/science/bath/acid-in-bath.ts'
import { startPh } from '#api/science/bath/start-ph.ts'
import { milligramsPerLitre, millilitres, percent } from '#api/science/units.ts'
import { figure } from '#web/form/number-words.ts'
import { PlainTable } from '#web/parts/plain-table.tsx'

const softWater = 20
const frame = { left: 34, right: 8, top: 12, bottom: 46, width: 328, height: 224 }
const lowest = 3
const highest = 8

export type AcidCurveProps = {
  /** mL of 5 % vinegar in a litre of bath, and the pH that gives. */
  readonly at: { readonly perLitre: number; readonly ph: number }
  /** Alkalinity, mg/L. */
  readonly water: number
  readonly label: string
}

/** The pH of the cold bath by its vinegar: in this water, and in soft water beside it; the same as a table at a press. */
export function AcidCurve(props: AcidCurveProps) {
  const most = mostOf(props.at.perLitre)
  const rows = [0, 0.1, 0.25, 0.5, 0.75, 1].map((part) => part * most)
  return (
    <figure class="curve-figure">
      <Curve {...props} />
      <details>
        <summary>as a table</summary>
        <PlainTable
          name="Start pH by vinegar"
          data={{
            head: [
              { words: 'mL of 5 % vinegar in a litre' },
              { words: `your water, ${figure(props.water, 0)}`, figure: true },
              { words: `soft, ${softWater}`, figure: true },
            ],
            rows: rows.map((perLitre) => ({
              key: String(perLitre),
              cells: [
                String(perLitre),
                figure(phAt(perLitre, props.water), 1),
                figure(phAt(perLitre, softWater), 1),
              ],
            })),
          }}
        />
      </details>
    </figure>
  )
}

/** How far the axis goes: to 40, or to a multiple of it. */
function mostOf(perLitre: number): number {
  return perLitre > 36 ? Math.ceil(perLitre / 36) * 40 : 40
}

function Curve({ at, water, label }: AcidCurveProps) {
  const most = mostOf(at.perLitre)
  const x = (perLitre: number): number =>
    frame.left + ((frame.width - frame.left - frame.right) * perLitre) / most
  const y = (ph: number): number =>
    frame.top + ((frame.height - frame.top - frame.bottom) * (highest - ph)) / (highest - lowest)
  const line = (alkalinity: number): string =>
    pointsOf(alkalinity, most)
      .map(([perLitre, ph]) => `${x(perLitre).toFixed(1)},${y(ph).toFixed(1)}`)
      .join(' ')
  const point = { x: x(at.perLitre), y: y(Math.max(lowest, Math.min(highest, at.ph))) }
  const isFarRight = at.perLitre > most * 0.55
  return (
    <svg
      class="curve"
      viewBox={`0 0 ${frame.width} ${frame.height}`}
      width="100%"
      role="img"
      aria-label={`${figure(at.perLitre, 0)} mL of 5 % vinegar in a litre of this water reads ${label}, in soft water pH ${figure(phAt(at.perLitre, softWater), 1)}.`}
    >
      {[3, 4, 5, 6, 7, 8].map((ph) => (
        <g key={ph}>
          <line
            x1={frame.left}
            x2={frame.width - frame.right}
            y1={y(ph)}
            y2={y(ph)}
            stroke={ph === lowest ? 'var(--ink)' : 'var(--hair)'}
            stroke-width={ph === lowest ? 1.5 : 1}
          />
          <text x={frame.left - 10} y={y(ph) + 5} text-anchor="end">
            {ph}
          </text>
        </g>
      ))}
      {[0, 1, 2, 3, 4].map((step) => (
        <text
          key={step}
          x={x((most * step) / 4)}
          y={frame.height - 26}
          text-anchor={step === 4 ? 'end' : 'middle'}
        >
          {(most * step) / 4}
        </text>
      ))}
      <text x={frame.width - frame.right} y={frame.height - 6} text-anchor="end">
        mL of 5 % vinegar in a litre
      </text>
      <polyline points={line(softWater)} fill="none" stroke="var(--line)" stroke-width="1.5" />
      <polyline points={line(water)} fill="none" stroke="var(--ink)" stroke-width="2" />
      {water <= 2 * softWater ? null : (
        <text x={x(most)} y={y(phAt(most * 0.8, softWater)) - 6} text-anchor="end">
          soft, {softWater}
        </text>
      )}
      <text class="curve-label" x={x(most)} y={y(phAt(most * 0.6, water)) - 8} text-anchor="end">
        your water, {figure(water, 0)}
      </text>
      <line x1={point.x} x2={point.x} y1={point.y} y2={y(lowest)} stroke="var(--accent)" stroke-width="1.5" />
      <circle cx={point.x} cy={point.y} r="6" fill="var(--accent)" />
      <text
        class="curve-point"
        x={point.x + (isFarRight ? 0 : 8)}
        y={point.y - (isFarRight ? 34 : 12)}
        text-anchor={isFarRight ? 'middle' : 'start'}
      >
        {label}
      </text>
    </svg>
  )
}

/** Denser where the curve falls fast. */
function pointsOf(alkalinity: number, most: number): [number, number][] {
  return Array.from({ length: 81 }, (_, step): [number, number] => {
    const perLitre = most * (step / 80) ** 2
    return [perLitre, Math.min(highest, phAt(perLitre, alkalinity))]
  })
}

function phAt(perLitre: number, alkalinity: number): number {
  const acetic = aceticInBath(millilitres(perLitre), percent(5), millilitres(1000))
  return startPh({ acetic }, alkalinityInMoles(milligramsPerLitre(alkalinity))).cold
}
