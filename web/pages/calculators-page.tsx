import '#web/pages/calculators/calculators.css'
import { useRoute } from 'preact-iso'
import { settingsOf } from '#web/api/settings.ts'
import { type Calculator, calculators, shelves } from '#web/pages/calculators/calculators.ts'
import { studioOf } from '#web/pages/calculators/studio.ts'
import { NotFoundPage } from '#web/pages/not-found-page.tsx'
import { PageTitle } from '#web/parts/page-title.tsx'
import { Reading } from '#web/parts/reading.tsx'
import { Section } from '#web/parts/section.tsx'
import { useLoaded } from '#web/state/loaded.ts'

/** The calculators: a list of them, or one. They work in the browser, with the very functions of the findings. */
export function CalculatorsPage() {
  const { params } = useRoute()
  if (params.name === undefined || params.name === '') return <CalculatorList />
  const calculator = calculators.find(({ name }) => name === params.name)
  return calculator === undefined ? <NotFoundPage /> : <OneCalculator key={calculator.name} {...calculator} />
}

function CalculatorList() {
  return (
    <div class="stack-wide">
      <div class="stack">
        <PageTitle>Calculators</PageTitle>
        <p>
          They answer as you type, with the same functions as the findings, and store nothing. Commas,
          fractions and kitchen measures are read: “10,2”, “¾”, “1 1/2 tbsp (US)”.
        </p>
      </div>
      {shelves.map((shelf) => (
        <Section key={shelf} title={shelf}>
          <ul class="calculator-list plain-list">
            {calculators
              .filter((it) => it.shelf === shelf)
              .map(({ name, title, says }) => (
                <li key={name}>
                  <a href={`/calculators/${name}`}>
                    <strong>{title}</strong>
                    <span>{says}</span>
                  </a>
                </li>
              ))}
          </ul>
        </Section>
      ))}
    </div>
  )
}

function OneCalculator({ title, says, part: Part }: Calculator) {
  // Without the settings a calculator begins with what most studios have; it needs no server.
  const settings = useLoaded('settings', settingsOf)
  return (
    <div class="stack">
      <div class="calculator-head">
        <p class="calculator-back">
          <a href="/calculators">Calculators</a>
        </p>
        <PageTitle>{title}</PageTitle>
        <p>{says}</p>
      </div>
      {settings.kind === 'reading' ? (
        <Reading />
      ) : (
        <Part studio={studioOf(settings.kind === 'here' ? settings.value : [])} />
      )}
    </div>
  )
}
