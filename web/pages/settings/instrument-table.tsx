import type { Instrument } from '#api/contract/instrument.ts'
import { smallestDetectable } from '#api/science/colour/noise.ts'
import { removeInstrument } from '#web/api/instruments.ts'
import { day } from '#web/form/date-words.ts'
import { figure } from '#web/form/number-words.ts'
import type { InstrumentsProps } from '#web/pages/settings/instruments.tsx'
import { useKeeping } from '#web/pages/settings/use-keeping.ts'
import { Button } from '#web/parts/button.tsx'
import { ProblemNote } from '#web/parts/problem-note.tsx'
import { TableBox } from '#web/parts/table-box.tsx'

const figures = ['SD L*', 'SD a*', 'SD b*', 'told by 3 placings'] as const

/** Every instrument with its noise, and where that is from. */
export function InstrumentTable({ instruments, onKept }: InstrumentsProps) {
  const keeping = useKeeping()
  const remove = async (instrument: Instrument): Promise<void> => {
    if (await keeping.keep(() => removeInstrument(instrument))) onKept()
  }
  return (
    <>
      <TableBox name="Instruments">
        <thead>
          <tr>
            <th scope="col">Name</th>
            <th scope="col">Method</th>
            {figures.map((head) => (
              <th key={head} scope="col" class="figure">
                {head}
              </th>
            ))}
            <th scope="col">Noise from</th>
            <th scope="col">Take away</th>
          </tr>
        </thead>
        <tbody>
          {instruments.map((it) => (
            <tr key={it.id}>
              <th scope="row">{it.name}</th>
              <td>{it.method}</td>
              {[it.sdL, it.sdA, it.sdB, toldBy(it)].map((value, column) => (
                <td key={figures[column]} class="figure">
                  {value === null ? '–' : figure(value)}
                </td>
              ))}
              <td>
                {it.sdFrom}
                {it.checkedOn === null ? '' : `, ${day(new Date(`${it.checkedOn}T12:00:00`))}`}
              </td>
              <td>
                <Button kind="plain" small name={`Remove ${it.name}`} onPress={() => void remove(it)}>
                  Remove
                </Button>
              </td>
            </tr>
          ))}
        </tbody>
      </TableBox>
      <p class="soft small">
        “Told by 3 placings” is the smallest difference that a mean of three can tell from noise: 2.8 × the
        largest SD ÷ √3. It should be half the margin or less.
      </p>
      <ProblemNote refused={keeping.refused} />
    </>
  )
}

function toldBy({ sdL, sdA, sdB }: Instrument): number | null {
  if (sdL === null || sdA === null || sdB === null) return null
  return smallestDetectable({ L: sdL, a: sdA, b: sdB }, 3)
}
