import { protocolsInWords, scalesInWords } from '#api/contract/scale-words.ts'
import { MethodSection } from '#web/pages/method/method-section.tsx'

/** Every scale step by step, and every test with what it takes and how it differs from its standard. */
export function ScalesAndProtocols() {
  return (
    <>
      <MethodSection id="scales" title="What the steps of each scale mean">
        {scalesInWords.map(({ name, how, steps, source }) => (
          <div key={name}>
            <h3>{name}</h3>
            <p>{how}</p>
            <ul>
              {steps.map(([step, words]) => (
                <li key={step}>
                  <strong>{step}</strong> {words}
                </li>
              ))}
            </ul>
            <p class="small soft">Source: {source}</p>
          </div>
        ))}
      </MethodSection>
      <MethodSection id="protocols" title="Washing, contact, rubbing and light">
        <ul>
          {protocolsInWords.map(([name, words]) => (
            <li key={name}>
              <strong>{name}.</strong> {words}
            </li>
          ))}
        </ul>
        <p>“In the manner of” a standard is not the standard: no result here is a certificate.</p>
      </MethodSection>
    </>
  )
}
