import { narrowBelow } from '#api/science/pictures/frame.ts'
import { rinseFace, rinseScales } from '#api/science/pictures/rinse-marks.ts'
import type { RinsePicture } from '#api/science/pictures/rinse-picture.ts'
import { chartOptions, marksPlugin } from '#web/charts/chart-options.ts'
import type { Drawing, Look } from '#web/charts/look.ts'
import { figure } from '#web/form/number-words.ts'
import type { PlainTableData } from '#web/parts/plain-table.tsx'

/** How the rinse water cleared, on the one logarithmic axis that we draw: measured in accent, pure dilution a thin line. */
export function rinseFall(picture: RinsePicture, look: Look): Drawing {
  const { x, y } = rinseScales(picture)
  const foot = 36 * look.textScale
  const narrow = look.width < narrowBelow * look.textScale
  const scale = { from: y.from, to: y.to, step: 1, ticks: y.ticks, decimals: 0 }
  const options = chartOptions({ x, y: scale, foot, right: 12 }, look)
  return {
    height: (narrow ? 230 : 290) * Math.sqrt(look.textScale) + foot,
    configuration: {
      type: 'scatter',
      data: {
        datasets: [
          {
            data: picture.measured.points.map(({ at, share }) => ({
              x: at,
              y: share,
              told: `${at === 0 ? 'The bath' : `Rinse ${at}`}: ${shareInWords(share)} of the bath’s tint`,
            })),
            showLine: true,
            pointRadius: 4.5,
            pointHoverRadius: 5.5,
            pointHitRadius: 12,
            borderColor: look.tones.accent,
            borderWidth: 2.25,
            pointBackgroundColor: look.tones.accent,
            pointBorderColor: look.tones.accent,
            clip: false,
            order: 1,
          },
          {
            data: picture.dilution.points.map(({ at, share }) => ({ x: at, y: share })),
            showLine: true,
            pointRadius: 0,
            pointHitRadius: 0,
            borderColor: look.tones.line,
            borderWidth: 1.25,
            order: 2,
          },
        ],
      },
      options: {
        ...options,
        scales: {
          ...options.scales,
          y: {
            type: 'logarithmic',
            min: y.from,
            max: y.to,
            border: { display: false },
            grid: { color: look.tones.hair, drawTicks: false },
            afterBuildTicks: (axis) => {
              axis.ticks = y.ticks.map((value) => ({ value }))
            },
            ticks: {
              padding: 10,
              autoSkip: false,
              color: look.tones.soft,
              font: { family: look.family, size: 15 * look.textScale, weight: 500 },
              callback: (value) => shareInWords(Number(value)),
            },
          },
        },
      },
      plugins: [marksPlugin(look, { over: (frame) => rinseFace(picture, frame) })],
    },
  }
}

/** The same as a table: a row for each rinse. */
export function rinseTable({ measured, dilution }: RinsePicture): PlainTableData {
  const ats = [...new Set([...measured.points, ...dilution.points].map(({ at }) => at))].toSorted(
    (one, other) => one - other,
  )
  const at = (points: RinsePicture['measured']['points'], rinse: number): string => {
    const point = points.find((it) => it.at === rinse)
    return point === undefined ? '–' : shareInWords(point.share)
  }
  return {
    head: [
      { words: 'Rinse' },
      { words: measured.label, figure: true },
      { words: dilution.label, figure: true },
    ],
    rows: ats.map((rinse) => ({
      key: String(rinse),
      cells: [rinse === 0 ? 'bath' : String(rinse), at(measured.points, rinse), at(dilution.points, rinse)],
    })),
  }
}

function shareInWords(share: number): string {
  const decimals =
    share >= 10 ? 0 : Math.min(4, Math.max(0, -Math.floor(Math.log10(share)) + (share >= 1 ? 1 : 0)))
  return `${figure(share, decimals).replace(/\.0+$/, '')}\u00a0%`
}
