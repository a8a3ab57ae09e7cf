import './hundred.css'

export type HundredProps = {
  /** How many of 100, 0–100. */
  readonly of100: number
  /** “with 4”, “of 100, with 2 sessions”. */
  readonly words: string
  readonly chosen?: boolean
}

/** A chance as dots out of a hundred: `<Hundred of100={84} words="with 4" chosen />`. The figure and words below say it too. */
export function Hundred({ of100, words, chosen = false }: HundredProps) {
  const filled = Math.round(Math.min(100, Math.max(0, of100)))
  return (
    <div class={chosen ? 'hundred hundred-chosen' : 'hundred'}>
      <Dots filled={filled} across={10} className="hundred-square" />
      <Dots filled={filled} across={20} className="hundred-band" />
      <p>
        <strong>{filled}</strong> <span>{words}</span>
      </p>
    </div>
  )
}

function Dots({ filled, across, className }: { filled: number; across: number; className: string }) {
  const step = 7.4
  const dot = (place: number): string => {
    const x = (place % across) * step + step / 2
    const y = Math.floor(place / across) * step + step / 2
    return `M${round(x - 2.7)} ${round(y)}a2.7 2.7 0 1 0 5.4 0a2.7 2.7 0 1 0 -5.4 0Z`
  }
  const all = Array.from({ length: 100 }, (_, place) => dot(place))
  return (
    <svg
      class={className}
      viewBox={`0 0 ${round(across * step)} ${round((100 / across) * step)}`}
      width={across * step}
      height={(100 / across) * step}
      aria-hidden="true"
    >
      <path d={all.slice(filled).join('')} fill="none" stroke="var(--line)" stroke-width="0.9" />
      <path d={all.slice(0, filled).join('')} fill="currentColor" stroke="currentColor" stroke-width="0.6" />
    </svg>
  )
}

function round(value: number): number {
  return Math.round(value * 100) / 100
}
