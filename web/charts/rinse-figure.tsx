import { useCallback, useMemo } from 'preact/hooks'
import type { RinsePicture } from '#api/science/pictures/rinse-picture.ts'
import { ChartFigure } from '#web/charts/chart-figure.tsx'
import type { Look } from '#web/charts/look.ts'
import { rinseFall, rinseTable } from '#web/charts/rinse-fall.ts'

/** How the rinse water cleared: `<RinseFigure picture={picture} />`, the picture made once (`useMemo`). */
export function RinseFigure({ picture }: { readonly picture: RinsePicture }) {
  const draw = useCallback((look: Look) => rinseFall(picture, look), [picture])
  const table = useMemo(() => rinseTable(picture), [picture])
  return (
    <ChartFigure
      title={picture.title}
      says={picture.says}
      finding={picture.finding}
      table={table}
      draw={draw}
    />
  )
}
