import type { LadderBracket, LadderPicture } from '#api/science/pictures/ladder-picture.ts'
import type { ShiftPicture } from '#api/science/pictures/shift-picture.ts'
import type { WearPicture } from '#api/science/pictures/wear-picture.ts'
import { figure, margin as marginFigure } from '#api/words/numbers.ts'
import type { Finding, LevelFinding } from './finding.ts'
import { countsLots, isOrdinal, leadingOf, questionOf } from './question.ts'

/**
 * What a finding is drawn from. Plain functions of the reply, without Zod: the pages draw the pictures on the screen, the
 * server as SVG for sheets that need no script.
 */

const percent = (share: number) => `${Math.round(share * 1000) / 10}\u00a0%`

/** The ladder: the outcome by level, every skein a dot. Undefined before anything was read. */
export function ladderOf(finding: Finding): LadderPicture | undefined {
  const { factor, outcome, verdict, levels, sessions } = finding
  if (!factor || !outcome || !levels.some((level) => level.mean !== null)) return undefined
  const numeric = factor.kind === 'number'
  const at = (level: { value: number | null; position: number }) =>
    numeric ? (level.value ?? level.position) : level.position
  const isLoss = outcome.key === 'dE00'
  const digits = isLoss ? { picture: 1, table: 2 } : { picture: 1, table: 2 }
  const interval = percent(2 * (finding.rule?.confidence ?? 0.95) - 1)
  // Of grades judged by the worst lot no mean is taken, and lots of one session have nothing in common.
  const byLot = finding.rule?.conditions.some(countsLots) ?? false
  const meanless = byLot || isOrdinal(outcome.key)
  const picture: LadderPicture = {
    title: `${outcome.label} by ${factor.label.toLowerCase()}`,
    says: byLot
      ? `${said(finding)} Each dot is a lot, by the worst of what was graded; lots alike lie on each other.`
      : meanless
        ? `${said(finding)} Each dot is a skein, thin lines join one session. No mean is taken of grades.`
        : `${said(finding)} Each dot is a skein, thin lines join one session, the bar is the mean of the sessions with its ${interval} interval.`,
    finding: verdict
      ? `${verdict.headline} ${verdict.lead}`
      : `${outcome.label} by ${factor.label.toLowerCase()}.`,
    axis: { label: factor.label, unit: factor.unit ?? '' },
    outcomeLabel: outcome.unit ? `${outcome.label}, ${outcome.unit}` : outcome.label,
    decimals: digits,
    fromZero: isLoss || outcome.unit === 'ΔE00',
    numeric,
    levels: levels.map((level) => ({
      key: level.id,
      label: level.tick,
      short: numeric && level.value !== null ? figure(level.value, 0) : level.tick,
      x: at(level),
      chosen: level.id === verdict?.levelId,
      reference: level.isReference,
      mean: meanless ? null : level.mean,
      lower: meanless ? null : level.lower,
      upper: meanless ? null : level.upper,
      skeins: finding.skeins
        .filter((skein) => skein.levelId === level.id && skein.value !== null && skein.status !== 'lost')
        .map((skein) => ({
          code: skein.code,
          session: skein.sessionId ?? '',
          value: skein.value ?? 0,
          ...(skein.grade ? { note: `grade ${skein.grade}` } : {}),
        })),
      lost: finding.skeins
        .filter((skein) => skein.levelId === level.id && skein.status === 'lost')
        .map((skein) => ({ code: skein.code, reason: skein.lostReason ?? 'lost' })),
    })),
    sessions: byLot ? [] : sessions.map(({ id, label }) => ({ key: id, label })),
    brackets: bracketsOf(finding, at),
    ...marginOf(finding),
    ...(finding.noise && isLoss
      ? {
          noise: {
            upTo: finding.noise.floor,
            label: `measuring error: ${noiseName(finding.noise)}, ${figure(finding.noise.floor, 1)}`,
          },
        }
      : {}),
    ...(verdict?.window
      ? { window: { from: at(verdict.window.from), to: at(verdict.window.to), label: verdict.windowText } }
      : {}),
  }
  return picture
}

function said({ outcome }: Finding): string {
  if (!outcome) return ''
  const worn = Object.keys(outcome.wear).length > 0 ? ` after ${outcome.wearInWords}` : ''
  if (outcome.key !== 'dE00') return `${outcome.label}${outcome.unit ? `, ${outcome.unit}` : ''}${worn}.`
  return Object.keys(outcome.wear).length === 0 ? 'ΔE00.' : `ΔE00 lost after ${outcome.wearInWords}.`
}

function noiseName(noise: NonNullable<Finding['noise']>): string {
  return noise.n === 0 ? 'as planned' : /twin/.test(noise.from) ? 'twin measured again' : 'measured again'
}

function marginOf({ verdict, levels, rule, outcome }: Finding): Pick<LadderPicture, 'margin'> {
  const reference = levels.find((level) => level.isReference)
  const main = rule === null ? undefined : leadingOf(rule.conditions)
  if (
    !verdict ||
    !main?.margin ||
    questionOf(main) !== 'no-worse' ||
    reference?.mean === null ||
    reference?.mean === undefined ||
    !outcome
  )
    return {}
  const larger = main.direction === 'larger is better'
  const margin = marginFigure(main.margin)
  return {
    margin: {
      at: larger ? reference.mean - main.margin : reference.mean + main.margin,
      label: `margin: ${margin} ${larger ? 'below' : 'above'} the mean of ${reference.words}`,
      short: `margin: ${margin} ${larger ? 'under' : 'over'} ${reference.tick}`,
    },
  }
}

type At = (level: LevelFinding) => number

/** Brackets for each rule that bounds the level: where the loss holds, and what closes the window from above. */
function bracketsOf({ steps, levels, verdict, factor, outcome }: Finding, at: At): LadderBracket[] {
  if (!verdict?.levelId || factor?.kind !== 'number') return []
  const byId = new Map(levels.map((level) => [level.id, level]))
  const held = steps.filter((step) => step.reference || (step.answer === 'holds' && !step.afterStop))
  const ends = held.flatMap((step) => byId.get(step.levelId) ?? [])
  const brackets: LadderBracket[] = []
  // Elsewhere what holds and the window are the same.
  if (ends.length > 1 && outcome?.key === 'dE00') {
    const xs = ends.map(at)
    const list = [...ends].sort((a, b) => at(a) - at(b)).map((level) => figure(level.value ?? 0, 0))
    brackets.push({
      from: Math.min(...xs),
      to: Math.max(...xs),
      label: `enough for colour: ${list.join(', ')}`,
      short: 'enough for colour',
      kind: 'range',
    })
  }
  const highs = new Map(
    steps
      .flatMap((step) => step.limits.filter((limit) => limit.end === 'high'))
      .map((limit) => [limit.key, limit]),
  )
  for (const high of highs.values()) {
    const upwards = [...levels].sort((a, b) => at(a) - at(b))
    const fine: LevelFinding[] = []
    for (const level of upwards) {
      const limit = steps.find((step) => step.levelId === level.id)?.limits.find((it) => it.key === high.key)
      if (!limit?.met) break
      fine.push(level)
    }
    const [first, last] = [fine[0], fine.at(-1)]
    if (!first || !last) continue
    brackets.push({
      from: at(first),
      to: at(last),
      label: `${high.label} ${high.limit} in every session: ${figure(first.value ?? 0, 0)} to ${figure(last.value ?? 0, 0)}`,
      short: `${high.label} ${high.limit}`,
      kind: 'range',
    })
  }
  return brackets
}

const washes: Record<string, [string, string]> = {
  W1: ['soak', 'soaks'],
  W2: ['wash', 'washes'],
  W3: ['tumble', 'tumbles'],
  W4: ['wash', 'washes'],
}

/** Loss as washes or weeks add up: a line for each level. Undefined where nothing was read along one axis. */
export function wearOf(finding: Finding): WearPicture | undefined {
  const { outcome, curve, levels, verdict } = finding
  const [axis] = Object.keys(outcome?.wear ?? {})
  if (outcome?.key !== 'dE00' || !axis || curve.length === 0) return undefined
  const light = axis.endsWith('days')
  const most = Math.max(...curve.flatMap((group) => group.points.map((point) => point.amount)))
  const [one, several] = washes[axis] ?? ['cycle', 'cycles']
  const named = (at: number) => (light ? `${at} days` : `${at} ${at === 1 ? one : several}`)
  const steps = light
    ? [...new Set(curve.flatMap((group) => group.points.map((point) => point.amount)))]
    : whole(most)
  return {
    title: light ? 'Loss as the weeks add up' : 'Loss as the washes add up',
    says: `ΔE00, mean of the sessions with its ${percent(2 * (finding.rule?.confidence ?? 0.95) - 1)} interval. Lines run only between readings; the dotted part was not read.`,
    finding: `Loss by level after ${outcome.wearInWords}.`,
    axis: { label: light ? 'Days' : 'Washes', unit: light ? 'd' : '' },
    outcomeLabel: 'Loss, ΔE00',
    ticks: [
      { at: 0, label: 'before', short: 'before' },
      ...steps.map((at) => ({
        at,
        label: at === 1 || at === most ? named(at) : String(at),
        short: String(at),
      })),
    ],
    groups: [...levels]
      .sort((a, b) => (b.mean ?? 0) - (a.mean ?? 0))
      .flatMap((level) => {
        const points = curve.find((group) => group.levelId === level.id)?.points
        if (!points) return []
        return [
          {
            key: level.id,
            label: level.tick,
            short: level.value === null ? level.tick : figure(level.value, 0),
            chosen: level.id === verdict?.levelId,
            points: [
              { at: 0, mean: 0 },
              ...points.map((point) => ({
                at: point.amount,
                mean: point.mean,
                lower: point.lower,
                upper: point.upper,
              })),
            ],
          },
        ]
      }),
    ...(finding.noise ? { noise: { upTo: finding.noise.floor, label: 'measuring error' } } : {}),
  }
}

function whole(most: number): number[] {
  const step = Math.max(1, Math.ceil(most / 6))
  const steps = Array.from({ length: Math.floor(most / step) }, (_, i) => (i + 1) * step)
  return steps.includes(most) ? steps : [...steps, most]
}

/** Which way the colour went, from before to after. Undefined without colours. */
export function shiftOf(finding: Finding): ShiftPicture | undefined {
  const { levels, skeins, verdict, factor } = finding
  const drawn = levels.flatMap((level) => {
    if (!level.before || !level.after) return []
    return [
      {
        key: level.id,
        label: level.tick,
        short: level.value === null ? level.tick : figure(level.value, 0),
        chosen: level.id === verdict?.levelId,
        before: level.before,
        after: level.after,
        skeins: skeins.flatMap((skein) =>
          skein.levelId === level.id && skein.before && skein.after && skein.status !== 'lost'
            ? [{ code: skein.code, before: skein.before, after: skein.after }]
            : [],
        ),
      },
    ]
  })
  if (drawn.length === 0 || !factor) return undefined
  return {
    title: 'Which way the colour went',
    says: `From before to after, mean of each level’s skeins, in the yarn’s own colours; thin lines are single skeins. Beside it L* by ${factor.label.toLowerCase()}, with its change.`,
    finding: `From before to after ${finding.outcome?.wearInWords ?? ''}: ${drawn.map((level) => `${level.label} ${levels.find((it) => it.id === level.key)?.direction.join(', ') || 'no change that can be told'}`).join('; ')}.`,
    axisLabel: factor.label,
    levels: drawn,
  }
}
