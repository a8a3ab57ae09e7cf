import type { Chart, Plugin } from 'chart.js'
import { type Frame, pictureFigure } from '#api/science/pictures/frame.ts'
import type { Mark } from '#api/science/pictures/marks.ts'
import type { Scale } from '#api/science/pictures/nice-scale.ts'
import type { Look, PictureConfiguration } from '#web/charts/look.ts'
import { paintMarks } from '#web/charts/paint-marks.ts'

type Options = NonNullable<PictureConfiguration['options']>

export type ChartShape = {
  readonly x: { readonly from: number; readonly to: number }
  readonly y: Scale
  /** Room below the axis and to the right of the plot, for names and labels. */
  readonly foot: number
  readonly right?: number
}

/**
 * How every chart is set up: nothing moves, no legend, no floating box; the upright axis has figures and hair lines but no
 * line of its own, the level one a line of ink and no figures, since the names below are ours.
 */
export function chartOptions({ x, y, foot, right = 4 }: ChartShape, look: Look): Options {
  const { tones, family, textScale } = look
  return {
    animation: false,
    responsive: false,
    maintainAspectRatio: false,
    font: { family, size: 15 * textScale, weight: 500 },
    interaction: { mode: 'nearest', intersect: true },
    layout: { padding: { top: 12, right, bottom: foot, left: 0 } },
    plugins: { legend: { display: false }, tooltip: { enabled: false } },
    scales: {
      x: {
        type: 'linear',
        min: x.from,
        max: x.to,
        grid: { display: false },
        border: { color: tones.ink, width: 1.5 },
        ticks: { display: false },
      },
      y: {
        type: 'linear',
        min: y.from,
        max: y.to,
        border: { display: false },
        grid: { color: tones.hair, drawTicks: false },
        ticks: {
          stepSize: y.step,
          padding: 10,
          color: tones.soft,
          font: { family, size: 15 * textScale, weight: 500 },
          callback: (value) => pictureFigure(Number(value), y.decimals),
        },
      },
    },
  }
}

/** The plot of a chart as our own marks see it. */
export function frameOf(chart: Chart, look: Look): Frame {
  const { left, top, right, bottom } = chart.chartArea
  const pixel = (axis: 'x' | 'y') => (value: number) => chart.scales[axis]?.getPixelForValue(value) ?? 0
  return {
    left,
    top,
    right,
    bottom,
    width: look.width,
    x: pixel('x'),
    y: pixel('y'),
    textScale: look.textScale,
  }
}

/** Our own marks behind and over what the chart draws itself. */
export function marksPlugin(
  look: Look,
  draw: { readonly behind?: (frame: Frame) => Mark[]; readonly over: (frame: Frame) => Mark[] },
): Plugin<'scatter'> {
  return {
    id: 'marks',
    beforeDatasetsDraw: (chart) => paintMarks(chart.ctx, draw.behind?.(frameOf(chart, look)) ?? [], look),
    afterDatasetsDraw: (chart) => paintMarks(chart.ctx, draw.over(frameOf(chart, look)), look),
  }
}
