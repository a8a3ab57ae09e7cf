import { useEffect, useMemo, useRef, useState } from 'preact/hooks'
import type { Drawing, Look } from '#web/charts/look.ts'
import { PictureFigure } from '#web/charts/picture-figure.tsx'
import { useLook } from '#web/charts/use-look.ts'
import type { PlainTableData } from '#web/parts/plain-table.tsx'

export type ChartFigureProps = {
  readonly title: string
  readonly says: string
  /** What it shows, as a sentence: its name. */
  readonly finding: string
  readonly table: PlainTableData
  /** A pure function of the look; keep it the same between renders (`useCallback`), or the chart is drawn anew each time. */
  readonly draw: (look: Look) => Drawing
}

/** A chart in its frame. It alone brings in the chart library, and only when a chart is on the page. */
export function ChartFigure({ title, says, finding, table, draw }: ChartFigureProps) {
  const place = useRef<HTMLDivElement>(null)
  const canvas = useRef<HTMLCanvasElement>(null)
  const look = useLook(place)
  const [told, setTold] = useState<string | undefined>()
  const drawing = useMemo(() => (look === undefined ? undefined : draw(look)), [draw, look])

  useEffect(() => {
    if (drawing === undefined || look === undefined) return undefined
    let left = false
    let takeDown: (() => void) | undefined
    const drawNow = async (): Promise<void> => {
      const [{ drawChart }] = await Promise.all([import('#web/charts/chart-drawing.ts'), lettersOf(look)])
      if (left || canvas.current === null) return
      canvas.current.width = look.width
      canvas.current.height = drawing.height
      takeDown = drawChart(canvas.current, drawing.configuration, setTold)
    }
    void drawNow()
    return () => {
      left = true
      takeDown?.()
    }
  }, [drawing, look])

  return (
    <PictureFigure title={title} says={says} table={table}>
      <div
        ref={place}
        class="picture-canvas"
        role="img"
        aria-label={finding}
        style={{ height: drawing === undefined ? undefined : `${drawing.height}px` }}
      >
        <canvas ref={canvas} />
      </div>
      <p class="picture-told">{told}</p>
    </PictureFigure>
  )
}

/** A canvas does not wait for letters by itself; without them the labels would be laid out for others. */
async function lettersOf({ family }: Look): Promise<void> {
  const [first = family] = family.split(',')
  await Promise.all([500, 700].map((weight) => document.fonts.load(`${weight} 15px ${first}`, 'aΔ−'))).catch(
    () => undefined,
  )
}
