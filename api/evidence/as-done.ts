import { bounds, type VariableKey } from '#api/contract/bounds.ts'
import { protocols } from '#api/science/fastness/protocols.ts'
import type { ExposureRecord } from '#db/trial-record.ts'

type Kind = (typeof protocols)[number]['kind']

/** What a test of each kind is repeated by, as the variables are called and counted in. */
const toRecord: Readonly<Record<Kind, readonly VariableKey[]>> = {
  wash: ['washTemp', 'washTime', 'washLiquor', 'detergent'],
  contact: ['washTemp', 'washTime'],
  light: ['sunHours', 'lux', 'dose'],
  rub: ['rubLoad'],
}

const names: Partial<Record<VariableKey, string>> = {
  washTemp: 'temperature',
  washTime: 'time',
  washLiquor: 'water',
  detergent: 'detergent',
  sunHours: 'hours of sun a day',
  lux: 'illuminance',
  dose: 'light dose',
  rubLoad: 'load',
}

/**
 * How the tests of one protocol were done, from what was recorded of them and from nothing else: a protocol is a plan.
 *
 * @example
 * asDone('W5', [{ vesselId: '1', protocol: 'W5', conditions: { washTemp: 36 } }]) // 'temperature 36 °C; time not recorded'
 */
export function asDone(code: string, exposures: readonly ExposureRecord[]): string {
  const kind = protocols.find((it) => it.code === code)?.kind ?? 'wash'
  const mine = exposures.filter((it) => it.protocol === code)
  const known: string[] = []
  const unknown: string[] = []
  for (const key of toRecord[kind]) {
    const name = names[key] ?? key
    const values = mine.flatMap(({ conditions }) => numberIn(conditions[key]) ?? [])
    if (values.length === 0) unknown.push(name)
    else {
      const some = values.length < mine.length ? ` (in ${values.length} of ${mine.length})` : ''
      known.push(`${name} ${range(values)} ${bounds[key].unit}${some}`)
    }
  }
  if (known.length === 0) return 'not recorded'
  return [known.join(', '), ...(unknown.length > 0 ? [`${unknown.join(', ')} not recorded`] : [])].join('; ')
}

/** A condition is a number, or an amount that was entered in another unit beside its value in ours. */
function numberIn(value: unknown): number | undefined {
  if (typeof value === 'number') return value
  if (typeof value === 'object' && value !== null && 'value' in value && typeof value.value === 'number')
    return value.value
  return undefined
}

function range(values: readonly number[]): string {
  const [low, high] = [Math.min(...values), Math.max(...values)]
  return low === high ? String(low) : `${low}–${high}`
}
