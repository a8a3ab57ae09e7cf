import { Chart, LinearScale, LineElement, LogarithmicScale, PointElement, ScatterController } from 'chart.js'
import type { PictureConfiguration } from '#web/charts/look.ts'

// Only what is drawn here; all else of the library stays out of the build. This file is loaded when the first chart is.
Chart.register(ScatterController, PointElement, LineElement, LinearScale, LogarithmicScale)

/** Draws a chart; gives back what takes it down again. `tell` gets the words of the point that is pointed at, or none. */
export function drawChart(
  canvas: HTMLCanvasElement,
  configuration: PictureConfiguration,
  tell: (words: string | undefined) => void,
): () => void {
  const chart = new Chart(canvas, {
    ...configuration,
    options: {
      ...configuration.options,
      onHover: (_event, [active]) => {
        if (active === undefined) return
        tell(configuration.data.datasets[active.datasetIndex]?.data[active.index]?.told)
      },
    },
  })
  return () => chart.destroy()
}
