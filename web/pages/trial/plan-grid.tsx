import type { PatternBench } from '#api/contract/patterns.ts'
import type { Factor } from '#api/contract/trial.ts'
import { counted } from '#web/form/number-words.ts'
import type { BenchSizes } from '#web/pages/trial/bench-draft.ts'
import { levelWords } from '#web/pages/trial/level-words.ts'
import { Packet } from '#web/parts/packet.tsx'

export type PlanGridProps = {
  readonly factor: Factor
  readonly bench: PatternBench
  readonly sizes: BenchSizes
  /** Levels are held against a reference, which is marked. */
  readonly referred: boolean
}

/** Rows that are drawn out; further sessions look the same. */
const mostRows = 8
/** Sessions that stand there to be planned. */
const offeredRows = 4
const mostDots = 6

/** The bench in small: a packet for each level in each session, its skeins inside. */
export function PlanGrid({ factor, bench, sizes, referred }: PlanGridProps) {
  const cells =
    bench.given === 'skein'
      ? Array.from({ length: sizes.vesselsPerLevel }, (_, card) => ({
          key: String(card),
          head: `${capital(bench.vessel.one)} ${card + 1}`,
          reference: false,
          dots: factor.levels.length * sizes.skeinsPerVessel,
          vessels: 1,
        }))
      : factor.levels.map((level) => ({
          key: level.id,
          head: levelWords(factor, level),
          reference: level.isReference && referred,
          dots: sizes.skeinsPerVessel,
          vessels: sizes.vesselsPerLevel,
        }))
  const rows = Math.min(mostRows, Math.max(sizes.sessions, bench.given === 'skein' ? 1 : offeredRows))
  const name = capital(bench.session.one)
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a box that scrolls must be reachable by keyboard (WCAG 2.1.1)
    // biome-ignore lint/a11y/useSemanticElements: a fieldset is for a form; this only groups what scrolls together
    <div class="plan-grid-box" role="group" aria-label="The bench" tabIndex={0}>
      <div class="plan-grid" style={{ '--levels': cells.length }}>
        <span class="plan-grid-corner" />
        {cells.map(({ key, head, reference }) => (
          <span
            key={key}
            class={reference ? 'plan-grid-head plan-grid-reference' : 'plan-grid-head'}
            aria-hidden="true"
          >
            {head}
          </span>
        ))}
        {Array.from({ length: rows }, (_, row) => {
          const planned = row < sizes.sessions
          return [
            <span
              key={`${row}`}
              class={planned ? 'plan-grid-session' : 'plan-grid-session plan-grid-to-come'}
              aria-hidden="true"
            >
              {name} {row + 1}
            </span>,
            ...cells.map(({ key, head, dots, vessels }) => (
              <div key={`${row} ${key}`} class="plan-grid-cell">
                {Array.from({ length: Math.min(vessels, 4) }, (__, beside) => (
                  <Packet
                    key={beside}
                    name={`${name} ${row + 1}, ${head}`}
                    skeins={
                      planned
                        ? Array.from({ length: Math.min(dots, mostDots) }, () => 'treated' as const)
                        : []
                    }
                  />
                ))}
              </div>
            )),
          ]
        })}
      </div>
      {sizes.sessions > mostRows ? (
        <p class="soft small">
          and {counted(sizes.sessions - mostRows, bench.session.one, bench.session.many)} more, alike
        </p>
      ) : null}
    </div>
  )
}

const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1)
