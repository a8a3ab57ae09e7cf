import { cautions } from '#api/contract/cautions.ts'
import { MethodSection } from '#web/pages/method/method-section.tsx'

/** What to mind at the bench, and what no claim may say. */
export function Cautions() {
  return (
    <MethodSection id="cautions" title="Cautions">
      <ul>
        {cautions.map(({ title, text, source }) => (
          <li key={title}>
            <strong>{title}.</strong> {text} <span class="small soft">({source})</span>
          </li>
        ))}
        <li>
          “Food-grade” is the colour as bought, not the yarn: no claim of edible, non-toxic or safe for
          babies. Permitted colours differ by place.
        </li>
        <li>A home test is not a certificate. A claim covers only what was tested.</li>
        <li>Laws on fibre, origin and care labels differ by country: this is no legal advice.</li>
      </ul>
    </MethodSection>
  )
}
