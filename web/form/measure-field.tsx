import type { ComponentChildren } from 'preact'
import { useState } from 'preact/hooks'
import type { VariableKey } from '#api/contract/bounds.ts'
import { convert } from '#api/science/recipe/convert.ts'
import { Field } from '#web/form/field.tsx'
import type { FieldFault } from '#web/form/field-notes.tsx'
import { type Measured, measured } from '#web/form/measured.ts'
import { withUnit } from '#web/form/number-words.ts'

export type MeasureFieldProps = {
  readonly name: string
  readonly label: ComponentChildren
  readonly help?: ComponentChildren
  /** The unit that is kept and worked with. */
  readonly keptAs: string
  /** Units to choose from; only `keptAs` when left out. */
  readonly units?: readonly string[]
  readonly amount?: string
  readonly unit?: string
  /** Its row in the table of variables: brings “Did you mean 35?” and “Keep it?”. */
  readonly variable?: VariableKey
  /** For what has no row there: the least that is possible. */
  readonly least?: number
  /** How the unit is said when there is no choice of one: “% of yarn”; `keptAs` when left out. */
  readonly unitWords?: string
  /** Said below the box when nothing is typed: “blank: not recorded, never zero”. */
  readonly blank?: string
  /** Said below the box of what is typed: “a mid shade: 0.5–1.5 %”. */
  readonly says?: string | undefined
  /** A doubt that needs more than this value alone: “Vinegar 150 mL per 100 g is three times the usual. Keep it?” */
  readonly doubt?: string | undefined
  /** Faults from the server, shown until something else is typed. */
  readonly faults?: readonly string[]
  /** What was read, and just as it stands in the box: `measured.unit` may be one that was typed behind the number. */
  readonly onMeasure?: (measured: Measured, box: { readonly amount: string; readonly unit: string }) => void
}

/**
 * An amount with its unit; what it counts as is said as it is typed. In a form it sends `name` and `name.unit`.
 * `<MeasureField name="vinegar" label="Vinegar" keptAs="mL" units={['mL', 'cup (US)']} unit="cup (US)" amount="¼" onMeasure={…} />`
 */
export function MeasureField(props: MeasureFieldProps) {
  const { name, keptAs, units = [keptAs], variable, least, blank, says, onMeasure } = props
  const [amount, setAmount] = useState(props.amount ?? '')
  const [unit, setUnit] = useState(props.unit ?? keptAs)
  const [kept, setKept] = useState<string | undefined>()
  const [changed, setChanged] = useState(false)
  const now = measured(amount, unit, { keptAs, variable, least })

  const tell = (typed: string, inUnit: string): void => {
    setAmount(typed)
    setUnit(inUnit)
    setChanged(true)
    onMeasure?.(measured(typed, inUnit, { keptAs, variable, least }), { amount: typed, unit: inUnit })
  }
  const fromServer = changed ? [] : (props.faults ?? []).map((detail) => ({ detail }))
  const doubt = now.doubt ?? (now.value === undefined ? undefined : props.doubt)
  const doubtIsOpen = doubt !== undefined && kept !== `${amount} ${unit} ${doubt}`
  const below = [now.countsAs, now.fault === undefined ? says : undefined].filter((it) => it !== undefined)

  return (
    <Field
      name={name}
      label={props.label}
      help={props.help}
      kind="number"
      value={amount}
      onInput={(typed) => tell(typed, unit)}
      {...(units.length > 1
        ? {
            units: {
              name: `${name}.unit`,
              value: unit,
              options: units,
              onChoose: (chosen: string) => tell(amount, chosen),
            },
          }
        : { unit: props.unitWords ?? (keptAs === '' ? undefined : keptAs) })}
      countsAs={below.length > 0 ? below.join('; ') : amount.trim() === '' ? blank : undefined}
      faults={[...faultsOf(now, unit, keptAs, (typed) => tell(typed, unit)), ...fromServer]}
      doubt={doubtIsOpen ? { detail: doubt, onKeep: () => setKept(`${amount} ${unit} ${doubt}`) } : undefined}
    />
  )
}

/** The fault of what was typed, with its mend where one can be guessed: “Make it 5 %”. */
export function faultsOf(
  { fault }: Measured,
  unit: string,
  keptAs: string,
  make: (typed: string) => void,
): FieldFault[] {
  if (fault === undefined) return []
  const [detail = '', hint] = fault.detail.split(/(?= Did you mean )/)
  // The table of variables speaks in the unit that is kept; the mend is made in the one that was typed.
  const meant = fault.suggestion === undefined ? undefined : convert(fault.suggestion, keptAs, unit)
  const words = meant === undefined ? undefined : String(Number(meant.toPrecision(6)))
  return [
    {
      detail,
      ...(hint === undefined ? {} : { hint: hint.trim() }),
      ...(words === undefined
        ? {}
        : { mend: { words: `Make it ${withUnit(words, unit)}`, make: () => make(words) } }),
    },
  ]
}
