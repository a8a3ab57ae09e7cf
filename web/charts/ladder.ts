import { sessionPoints } from '#api/science/pictures/ladder-drawing.ts'
import { ladderFoot } from '#api/science/pictures/ladder-foot.ts'
import { ladderFace, ladderGround } from '#api/science/pictures/ladder-marks.ts'
import type { LadderPicture } from '#api/science/pictures/ladder-picture.ts'
import { ladderScales } from '#api/science/pictures/ladder-scales.ts'
import { chartOptions, marksPlugin } from '#web/charts/chart-options.ts'
import { type Drawing, type Look, type ToldPoint, thinned } from '#web/charts/look.ts'
import { figure, fromTo } from '#web/form/number-words.ts'
import type { PlainTableData } from '#web/parts/plain-table.tsx'

/** The ladder as a chart: every skein a dot, a thin line for each session; all else is laid over it by our own marks. */
export function ladder(picture: LadderPicture, look: Look): Drawing {
  const scales = ladderScales(picture, look)
  const dot = scales.narrow ? 4 : 5
  return {
    height: (scales.narrow ? 226 : 392) * Math.sqrt(look.textScale) + scales.foot,
    configuration: {
      type: 'scatter',
      data: {
        datasets: [
          {
            data: skeinPoints(picture),
            pointRadius: dot,
            pointHoverRadius: dot + 1,
            pointHitRadius: 12,
            pointBorderWidth: 1.5,
            pointHoverBorderWidth: 2.5,
            pointBorderColor: look.tones.ink,
            pointBackgroundColor: thinned(look.tones.ink, 0.22),
            clip: false,
            order: 1,
          },
          ...sessionPoints(picture).map(({ points }) => ({
            data: points,
            showLine: true,
            pointRadius: 0,
            pointHitRadius: 0,
            borderWidth: 1,
            borderColor: look.tones.line,
            order: 2,
          })),
        ],
      },
      options: chartOptions(scales, look),
      plugins: [
        marksPlugin(look, {
          behind: (frame) => ladderGround(picture, frame),
          over: (frame) => [...ladderFace(picture, frame), ...ladderFoot(picture, frame)],
        }),
      ],
    },
  }
}

/** Every skein as a point, with what is said of it: “Skein 3-6, 50 min: 1.86, grade 3-4”. */
export function skeinPoints({ levels, decimals }: LadderPicture): ToldPoint[] {
  return levels.flatMap(({ x, label, skeins }) =>
    skeins.map(({ code, value, note }) => ({
      x,
      y: value,
      told: `Skein ${code}, ${label}: ${figure(value, decimals?.table ?? 2)}${note === undefined ? '' : `, ${note}`}`,
    })),
  )
}

/** The same as a table: a row for each level, a column for each session, the mean with its interval, and the lost. */
export function ladderTable({ levels, sessions, axis, decimals }: LadderPicture): PlainTableData {
  const digits = decimals?.table ?? 2
  const anyLost = levels.some(({ lost }) => lost.length > 0)
  const anyMean = levels.some(({ mean }) => typeof mean === 'number')
  return {
    head: [
      { words: axis.label },
      ...(sessions.length === 0 ? [{ words: 'each', figure: true }] : []),
      ...sessions.map(({ label }) => ({ words: label, figure: true })),
      ...(anyMean
        ? [
            { words: 'mean', figure: true },
            { words: 'interval', figure: true },
          ]
        : []),
      ...(anyLost ? [{ words: 'lost' }] : []),
    ],
    rows: levels.map(({ key, label, chosen, skeins, mean, lower, upper, lost }) => ({
      key,
      chosen,
      cells: [
        label,
        ...(sessions.length === 0
          ? [skeins.map(({ value }) => figure(value, digits)).join(', ') || '–']
          : []),
        ...sessions.map((session) => valuesIn(session.key, skeins, digits)),
        ...(anyMean
          ? [
              typeof mean === 'number' ? figure(mean, digits) : '–',
              typeof lower === 'number' && typeof upper === 'number' ? fromTo(lower, upper, digits) : '–',
            ]
          : []),
        ...(anyLost ? [lost.map(({ code, reason }) => `${code}, ${reason}`).join('; ')] : []),
      ],
    })),
  }
}

function valuesIn(
  session: string,
  skeins: LadderPicture['levels'][number]['skeins'],
  digits: number,
): string {
  const values = skeins.filter((skein) => skein.session === session).map(({ value }) => figure(value, digits))
  return values.length === 0 ? '–' : values.join(', ')
}
