import { useCallback, useMemo } from 'preact/hooks'
import type { LadderPicture } from '#api/science/pictures/ladder-picture.ts'
import { ChartFigure } from '#web/charts/chart-figure.tsx'
import { ladder, ladderTable } from '#web/charts/ladder.ts'
import type { Look } from '#web/charts/look.ts'

/** The outcome by level: `<LadderFigure picture={picture} />`, the picture made once from the finding (`useMemo`). */
export function LadderFigure({ picture }: { readonly picture: LadderPicture }) {
  const draw = useCallback((look: Look) => ladder(picture, look), [picture])
  const table = useMemo(() => ladderTable(picture), [picture])
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
