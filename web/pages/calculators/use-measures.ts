import { useState } from 'preact/hooks'
import type { VariableKey } from '#api/contract/bounds.ts'
import type { MeasureFieldProps } from '#web/form/measure-field.tsx'
import { measured } from '#web/form/measured.ts'

export type Asked = {
  readonly label: string
  /** As in “Waits for the strength and the water”. */
  readonly words: string
  readonly keptAs: string
  readonly units?: readonly string[]
  /** What stands there first. */
  readonly unit?: string
  readonly amount?: string
  readonly variable?: VariableKey
  readonly least?: number
  readonly help?: string
  readonly blank?: string
  readonly unitWords?: string
}

export type Measures<Key extends string> = {
  /** In the unit that is kept; undefined when blank or at fault. */
  readonly value: (key: Key) => number | undefined
  /** For `<MeasureField {...fields.of('yarn')} />`. */
  readonly of: (key: Key) => MeasureFieldProps
  /** What is missing of these, in words; empty when all is there. */
  readonly missing: (...keys: readonly Key[]) => readonly string[]
}

/** What was typed stays, also when one comes back from another page. */
const typedBefore = new Map<string, { readonly amount: string; readonly unit: string }>()

/**
 * The measured fields of a calculator, by name.
 * `const fields = useMeasures('depth', { yarn: { label: 'Dry yarn', words: 'the dry yarn', keptAs: 'g' } })`
 */
export function useMeasures<Key extends string>(
  calculator: string,
  asked: Readonly<Record<Key, Asked>>,
): Measures<Key> {
  const [, setTimes] = useState(0)
  const box = (key: Key): { amount: string; unit: string } => {
    const { amount = '', unit, keptAs }: Asked = asked[key]
    return typedBefore.get(`${calculator}.${key}`) ?? { amount, unit: unit ?? keptAs }
  }
  const value = (key: Key): number | undefined => {
    const { keptAs, variable, least }: Asked = asked[key]
    const { amount, unit } = box(key)
    return measured(amount, unit, { keptAs, variable, least }).value
  }
  return {
    value,
    missing: (...keys) => keys.filter((key) => value(key) === undefined).map((key) => asked[key].words),
    of: (key) => {
      const { words: _, ...props }: Asked = asked[key]
      return {
        ...props,
        ...box(key),
        name: key,
        onMeasure: (_measured, typed) => {
          typedBefore.set(`${calculator}.${key}`, typed)
          setTimes((times) => times + 1)
        },
      }
    },
  }
}
