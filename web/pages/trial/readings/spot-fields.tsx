import { faultsAt } from '#web/api/client.ts'
import type { SpotSent } from '#web/api/readings.ts'
import { Field } from '#web/form/field.tsx'
import { coloursOf } from '#web/pages/trial/readings/row-colours.ts'
import { Button } from '#web/parts/button.tsx'
import { Swatch } from '#web/parts/swatch.tsx'

const mostSpots = 5
export const blankSpot: SpotSent = { l: '', a: '', b: '' }

const colour = ({ l, a, b }: SpotSent) => coloursOf([l, a, b], [{ L: 0, a: 1, b: 2 }])

export type SpotFieldsProps = {
  readonly spots: readonly SpotSent[]
  readonly refused: unknown
  readonly onSpots: (spots: readonly SpotSent[]) => void
}

/** One to five places on a skein, each with its L*, a* and b*. */
export function SpotFields({ spots, refused, onSpots }: SpotFieldsProps) {
  const type = (place: number, axis: keyof SpotSent, typed: string): void =>
    onSpots(spots.map((spot, at) => (at === place ? { ...spot, [axis]: typed } : spot)))
  return (
    <div class="stack">
      {spots.map((spot, place) => (
        <fieldset key={place} class="reading-spot">
          <legend class="choice-name">{spots.length === 1 ? 'Spot' : `Spot ${place + 1}`}</legend>
          <div class="reading-axes">
            {(['l', 'a', 'b'] as const).map((axis) => (
              <Field
                key={axis}
                name={`spot-${place}-${axis}`}
                label={`${axis === 'l' ? 'L' : axis}*`}
                kind="number"
                value={spot[axis]}
                onInput={(typed) => type(place, axis, typed)}
                faults={faultsAt(refused, `#/spots/${place}/${axis}`).map((detail) => ({ detail }))}
              />
            ))}
            {colour(spot).length === 0 ? null : <Swatch size="list" colours={colour(spot)} />}
          </div>
        </fieldset>
      ))}
      <div class="row">
        {spots.length < mostSpots ? (
          <Button small onPress={() => onSpots([...spots, blankSpot])}>
            Another spot
          </Button>
        ) : null}
        {spots.length > 1 ? (
          <Button small kind="plain" onPress={() => onSpots(spots.slice(0, -1))}>
            Take the last spot back
          </Button>
        ) : null}
      </div>
    </div>
  )
}
