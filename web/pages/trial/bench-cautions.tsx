import './bench-cautions.css'
import { type BenchSaid, cautionsAt, firstAid } from '#api/contract/cautions.ts'

/** What to mind at this bench, and first aid, on the screen and on paper. */
export function BenchCautions(props: BenchSaid) {
  const due = cautionsAt(props)
  if (due.length === 0) return null
  return (
    <ul class="bench-cautions plain-list" aria-label="Cautions">
      {[...due, ...firstAid].map(({ title, text }) => (
        <li key={title}>
          <strong>{title}.</strong> {text}
        </li>
      ))}
    </ul>
  )
}
