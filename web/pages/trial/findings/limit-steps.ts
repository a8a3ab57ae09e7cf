import type { Finding, Step } from '#api/contract/finding.ts'
import { countsLots } from '#api/contract/question.ts'
import { figure, signed } from '#web/form/number-words.ts'
import { alikeAtFirst, sidesOf, worstOf } from '#web/pages/trial/findings/finding-words.ts'
import type { StepTableProps } from '#web/pages/trial/findings/step-table.tsx'

type Cell = StepTableProps['steps'][number]['cells'][number]

/** The steps of a rule that judges by limits that every unit must meet: claims by lot, the least acid. */
export function limitSteps(finding: Finding): StepTableProps {
  const { steps, factor, verdict, outcome, rule } = finding
  const byLot = rule?.conditions.some(countsLots) ?? false
  const sides = sidesOf(steps)
  const { alike, rest } = alikeAtFirst(sides.map(({ label }) => label))
  const shown = steps.some(({ mean }) => mean !== null)
  const against = steps.some(({ extra }) => extra !== null)
  const name = outcome?.label ?? 'mean'
  return {
    says: byLot
      ? `The worst of all lots in each test${alike === '' ? '' : `: ${alike} …`} No mean is taken of grades.`
      : 'Every session must meet the limits; means are compared with the next level. No interval decides.',
    axisLabel: factor?.label ?? '',
    columns: [
      { label: byLot ? 'lots' : 'sessions', short: byLot ? 'lots' : 'sessions' },
      ...sides.map((side, place) => ({
        label: byLot ? (rest[place] ?? side.label) : worstOf(side),
        short: rest[place] ?? side.label,
      })),
      ...(shown ? [{ label: `mean ${name}`, short: name }] : []),
      ...(against ? [{ label: 'over the next level', short: 'over the next' }] : []),
      ...(against ? [{ label: 'upper 95 % limit', short: 'at most' }] : []),
    ],
    steps: steps.map((step) => ({
      key: step.levelId,
      label: step.label,
      chosen: step.levelId === verdict?.levelId,
      afterStop: step.afterStop,
      verdict: step.afterStop ? null : step.answer,
      answer: step.says,
      cells: [
        plain(String(step.n)),
        ...sides.map(({ key }) => cellOf(step, key)),
        ...(shown ? [plain(step.mean === null ? '–' : figure(step.mean, 1))] : []),
        ...(against ? [plain(step.extra === null ? '–' : signed(step.extra, 1))] : []),
        ...(against ? [plain(step.upper === null ? '–' : signed(step.upper, 1))] : []),
      ],
    })),
  }
}

function cellOf({ limits }: Step, key: string): Cell {
  const limit = limits.find((it) => it.key === key)
  return limit === undefined ? plain('–') : { words: limit.worstText, outside: limit.broken }
}

const plain = (words: string): Cell => ({ words, outside: false })
