import './picture-figure.css'
import type { ComponentChildren } from 'preact'
import { useId, useState } from 'preact/hooks'
import { Button } from '#web/parts/button.tsx'
import { withDeltaE } from '#web/parts/delta-e.tsx'
import { PlainTable, type PlainTableData } from '#web/parts/plain-table.tsx'

export type PictureFigureProps = {
  readonly title: string
  readonly says: string
  readonly table: PlainTableData
  /** The picture itself, with its own name. */
  readonly children: ComponentChildren
}

/** The frame of every picture: a rule, its heading, one soft line, and the same data “as a table” at a press. */
export function PictureFigure({ title, says, table, children }: PictureFigureProps) {
  const id = useId()
  const [asTable, setAsTable] = useState(false)
  return (
    <figure class="picture" aria-labelledby={`${id}-title`}>
      <figcaption class="picture-head">
        <h2 id={`${id}-title`}>{withDeltaE(title)}</h2>
        <p>{withDeltaE(says)}</p>
      </figcaption>
      <div class="picture-toggle">
        <Button
          kind="plain"
          small
          expanded={asTable}
          controls={`${id}-table`}
          name={asTable ? `as a picture: ${title}` : `as a table: ${title}`}
          onPress={() => setAsTable(!asTable)}
        >
          {asTable ? 'as a picture' : 'as a table'}
        </Button>
      </div>
      <div class="picture-body" hidden={asTable}>
        {children}
      </div>
      <div class="picture-table" id={`${id}-table`} hidden={!asTable}>
        {asTable ? <PlainTable name={title} data={table} /> : null}
      </div>
    </figure>
  )
}
