import { Field } from '#web/form/field.tsx'
import { measured } from '#web/form/measured.ts'
import { blankPart, type Part, partFault } from '#web/pages/calculators/rescale-parts.ts'
import { Button } from '#web/parts/button.tsx'

const mostParts = 12

export type PartFieldsProps = {
  readonly parts: readonly Part[]
  readonly units: readonly string[]
  readonly onParts: (parts: readonly Part[]) => void
}

/** The ingredients of a recipe, each with its amount in whatever measure the recipe has. */
export function PartFields({ parts, units, onParts }: PartFieldsProps) {
  const change = (id: number, changes: Partial<Part>): void =>
    onParts(parts.map((part) => (part.id === id ? { ...part, ...changes } : part)))
  const next = Math.max(...parts.map(({ id }) => id)) + 1
  return (
    <>
      {parts.map((part, place) => (
        <div key={part.id} class="fields">
          <Field
            name={`name-${place}`}
            label={`Ingredient ${place + 1}`}
            value={part.name}
            onInput={(name) => change(part.id, { name })}
          />
          <Field
            name={`amount-${place}`}
            label={`Amount ${place + 1}`}
            kind="number"
            value={part.amount}
            onInput={(amount) => change(part.id, { amount })}
            units={{
              name: `unit-${place}`,
              value: part.unit,
              options: units,
              onChoose: (unit) => change(part.id, { unit }),
            }}
            countsAs={measured(part.amount, part.unit, { keptAs: part.unit }).countsAs}
            faults={partFault(part)}
          />
        </div>
      ))}
      {parts.length < mostParts ? (
        <div class="row">
          <Button small onPress={() => onParts([...parts, blankPart(next)])}>
            Another ingredient
          </Button>
        </div>
      ) : null}
    </>
  )
}
