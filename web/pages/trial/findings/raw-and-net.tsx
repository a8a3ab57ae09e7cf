import type { Finding } from '#api/contract/finding.ts'
import { figure, fromTo, perCent } from '#web/form/number-words.ts'
import { stepsOnRuler } from '#web/pages/trial/findings/steps-on-ruler.ts'
import { TableBox } from '#web/parts/table-box.tsx'

/** What the deciding limits come from: the figures as measured, and with the measuring error taken off. */
export function RawAndNet({ finding }: { readonly finding: Finding }) {
  const { steps, rule, verdict, factor } = finding
  const shown = steps.filter(({ reference, lower, upper }) => !reference && lower !== null && upper !== null)
  const ruler = stepsOnRuler(finding)
  if (ruler === undefined || shown.length === 0) return null
  const confidence = perCent(verdict?.estimate?.confidence ?? 2 * (rule?.confidence ?? 0.95) - 1)
  const net = shown.some(({ netExtra }) => netExtra !== null)
  return (
    <div>
      <h3>As measured, and what decides</h3>
      <TableBox name="As measured, and what decides">
        <thead>
          <tr>
            <th scope="col">{factor?.label ?? ''}</th>
            <th scope="col" class="figure">
              mean
            </th>
            <th scope="col" class="figure">
              as measured, {confidence}
            </th>
            {net ? (
              <th scope="col" class="figure">
                net mean
              </th>
            ) : null}
            {net ? (
              <th scope="col" class="figure">
                net upper limit
              </th>
            ) : null}
            <th scope="col" class="figure">
              decides
            </th>
          </tr>
        </thead>
        <tbody>
          {shown.map(({ levelId, label, extra, lower, upper, netExtra, netUpper, deciding }) => (
            <tr key={levelId}>
              <th scope="row">{label}</th>
              <td class="figure">{said(extra)}</td>
              <td class="figure">{lower === null || upper === null ? '–' : fromTo(lower, upper)}</td>
              {net ? <td class="figure">{said(netExtra)}</td> : null}
              {net ? <td class="figure">{said(netUpper)}</td> : null}
              <td class="figure strong">
                {deciding === null ? '–' : fromTo(deciding.lower, deciding.upper)}
              </td>
            </tr>
          ))}
        </tbody>
      </TableBox>
    </div>
  )
}

const said = (value: number | null): string => (value === null ? '–' : figure(value))
