import { narrowBelow } from '#api/science/pictures/frame.ts'
import { wearFace, wearGround, wearPieces, wearScales } from '#api/science/pictures/wear-marks.ts'
import type { WearGroup, WearPicture, WearPoint } from '#api/science/pictures/wear-picture.ts'
import { chartOptions, marksPlugin } from '#web/charts/chart-options.ts'
import type { Drawing, Look, PictureConfiguration, ToldPoint } from '#web/charts/look.ts'
import { figure, fromTo } from '#web/form/number-words.ts'
import type { PlainTableData } from '#web/parts/plain-table.tsx'

type Dataset = PictureConfiguration['data']['datasets'][number]

/** Loss as washes or weeks add up: lines only between readings, dotted where a step between them was not read. */
export function wearCurve(picture: WearPicture, look: Look): Drawing {
  const scales = wearScales(picture, look)
  const steps = picture.ticks.map(({ at }) => at)
  const foot = 36 * look.textScale
  const narrow = look.width < narrowBelow * look.textScale
  return {
    height: (narrow ? 260 : 392) * Math.sqrt(look.textScale) + foot,
    configuration: {
      type: 'scatter',
      data: {
        datasets: [
          ...picture.groups.map((group) => dots(group, picture, look)),
          ...picture.groups.flatMap((group) => pieces(group, steps, look)),
          ...(picture.wools ?? []).map(({ points }) => wool(points, look)),
        ],
      },
      options: chartOptions({ x: scales.x, y: scales.y, foot, right: scales.right }, look),
      plugins: [
        marksPlugin(look, {
          behind: (frame) => wearGround(picture, frame),
          over: (frame) => wearFace(picture, frame),
        }),
      ],
    },
  }
}

function dots(group: WearGroup, picture: WearPicture, look: Look): Dataset {
  const tone = group.chosen ? look.tones.accent : look.tones.ink
  return {
    data: group.points.map((point) => told(group, point, picture)),
    pointRadius: 4,
    pointHoverRadius: 5,
    pointHitRadius: 12,
    pointBackgroundColor: tone,
    pointBorderColor: tone,
    clip: false,
    order: 1,
  }
}

function pieces({ points, chosen }: WearGroup, steps: readonly number[], look: Look): Dataset[] {
  return wearPieces(points, steps).map(({ from, to, read }) => ({
    data: [
      { x: from.at, y: from.mean },
      { x: to.at, y: to.mean },
    ],
    showLine: true,
    pointRadius: 0,
    pointHitRadius: 0,
    borderColor: chosen ? look.tones.accent : look.tones.ink,
    borderWidth: chosen ? 2.25 : read ? 1.75 : 1.5,
    ...(read ? {} : { borderDash: chosen ? [0.1, 4.5] : [0.1, 4.5], borderCapStyle: 'round' as const }),
    clip: false as const,
    order: chosen ? 2 : 3,
  }))
}

function wool(points: readonly WearPoint[], look: Look): Dataset {
  return {
    data: points.toSorted((one, other) => one.at - other.at).map(({ at, mean }) => ({ x: at, y: mean })),
    showLine: true,
    pointRadius: 0,
    pointHitRadius: 0,
    borderColor: look.tones.line,
    borderWidth: 1,
    order: 4,
  }
}

function told({ label }: WearGroup, { at, mean, lower, upper }: WearPoint, picture: WearPicture): ToldPoint {
  const digits = picture.decimals?.table ?? 2
  const interval =
    typeof lower === 'number' && typeof upper === 'number' ? ` (${fromTo(lower, upper, digits)})` : ''
  return { x: at, y: mean, told: `${label}, ${stepName(picture, at)}: ${figure(mean, digits)}${interval}` }
}

function stepName({ ticks, axis }: WearPicture, at: number): string {
  return ticks.find((tick) => tick.at === at)?.label ?? `${at} ${axis.unit}`
}

/** The same as a table: a row for each reading’s step, a column for each group, with the interval where there is one. */
export function wearTable(picture: WearPicture): PlainTableData {
  const { groups, wools = [], axis, decimals } = picture
  const digits = decimals?.table ?? 2
  const lines = [
    ...groups,
    ...wools.map(({ number, points }) => ({ key: `w${number}`, label: `blue wool ${number}`, points })),
  ]
  const ats = [...new Set(lines.flatMap(({ points }) => points.map(({ at }) => at)))].toSorted(
    (one, other) => one - other,
  )
  return {
    head: [{ words: axis.label }, ...lines.map(({ label }) => ({ words: label, figure: true }))],
    rows: ats.map((at) => ({
      key: String(at),
      cells: [
        stepName(picture, at),
        ...lines.map(({ points }) => {
          const point = points.find((it) => it.at === at)
          if (point === undefined) return 'not read'
          const { mean, lower, upper } = point
          if (typeof lower !== 'number' || typeof upper !== 'number') return figure(mean, digits)
          return `${figure(mean, digits)} (${fromTo(lower, upper, digits)})`
        }),
      ],
    })),
  }
}
