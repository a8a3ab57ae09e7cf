import { useState } from 'preact/hooks'
import { faultsAt } from '#web/api/client.ts'
import { keepSetting } from '#web/api/settings.ts'
import { MeasureField, type MeasureFieldProps } from '#web/form/measure-field.tsx'
import { studioOf, type UsualKey } from '#web/pages/calculators/studio.ts'
import type { SettingProps } from '#web/pages/settings/units.tsx'
import { useKeeping } from '#web/pages/settings/use-keeping.ts'
import { Button } from '#web/parts/button.tsx'
import { ProblemNote } from '#web/parts/problem-note.tsx'
import { Section } from '#web/parts/section.tsx'

type Usual = Omit<MeasureFieldProps, 'name' | 'amount'> & { readonly name: UsualKey }

const usualFields: readonly Usual[] = [
  { name: 'stockPercent', label: 'Stock', keptAs: '%', variable: 'stockStrength' },
  { name: 'liquorRatio', label: 'Bath for each gram', keptAs: 'mL/g', variable: 'liquorRatio' },
  { name: 'scaleStepGrams', label: 'Scale reads to', keptAs: 'g', least: 0 },
  { name: 'acidStrengthPercent', label: 'Vinegar strength', keptAs: '%', variable: 'acidStrength' },
  {
    name: 'waterAlkalinity',
    label: 'Alkalinity of the water',
    keptAs: 'mg/L',
    units: ['mg/L', 'ppm', '°dH', '°fH', '°e', 'meq/L'],
    variable: 'tapAlkalinity',
    blank: 'blank: not known, never zero',
  },
  {
    name: 'altitudeMetres',
    label: 'Altitude',
    keptAs: 'm',
    units: ['m', 'ft'],
    variable: 'altitude',
    blank: 'blank: not known',
  },
  { name: 'yarnWetness', label: 'Wetness of the yarn', keptAs: 'g/g', variable: 'yarnWetness' },
  { name: 'margin', label: 'Margin, extra loss', keptAs: '', unitWords: 'ΔE', least: 0 },
]

/** What the calculators begin with. */
export function UsualValues({ settings, onKept }: SettingProps) {
  const keeping = useKeeping()
  const { usual } = studioOf(settings)
  const version = settings.find(({ key }) => key === 'usual')?.version ?? 0
  // Only what was touched: the rest stays as it is kept. What cannot be read goes as typed, for the server to name.
  const [touched, setTouched] = useState<Partial<Record<UsualKey, string>>>({})
  const keep = async (): Promise<void> => {
    const value = Object.fromEntries(usualFields.map(({ name }) => [name, touched[name] ?? usual[name]]))
    if (await keeping.keep(() => keepSetting({ key: 'usual', version }, value))) onKept()
  }
  return (
    <Section title="Usual values" says="The calculators begin with these.">
      <form
        class="stack"
        noValidate
        onSubmit={(event) => {
          event.preventDefault()
          void keep()
        }}
      >
        <div class="fields settings-usual">
          {usualFields.map((field) => (
            <MeasureField
              key={field.name}
              {...field}
              amount={usual[field.name]}
              faults={faultsAt(keeping.refused, `#/${field.name}`)}
              onMeasure={({ value }, { amount }) => {
                keeping.changed()
                setTouched({ ...touched, [field.name]: value === undefined ? amount : String(value) })
              }}
            />
          ))}
        </div>
        <ProblemNote refused={keeping.refused} />
        <div class="row">
          <Button type="submit" busy={keeping.busy ? 'Keeping …' : undefined}>
            Keep these values
          </Button>
          <p role="status" class="soft">
            {keeping.kept ? 'Kept.' : ''}
          </p>
        </div>
      </form>
    </Section>
  )
}
