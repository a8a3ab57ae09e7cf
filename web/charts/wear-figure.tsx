import { useCallback, useMemo } from 'preact/hooks'
import type { WearPicture } from '#api/science/pictures/wear-picture.ts'
import { ChartFigure } from '#web/charts/chart-figure.tsx'
import type { Look } from '#web/charts/look.ts'
import { wearCurve, wearTable } from '#web/charts/wear-curve.ts'

/** Loss as washes or weeks add up: `<WearFigure picture={picture} />`, the picture made once from the finding (`useMemo`). */
export function WearFigure({ picture }: { readonly picture: WearPicture }) {
  const draw = useCallback((look: Look) => wearCurve(picture, look), [picture])
  const table = useMemo(() => wearTable(picture), [picture])
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
