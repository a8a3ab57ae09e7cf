import { Button } from '#web/parts/button.tsx'
import { PageTitle } from '#web/parts/page-title.tsx'

/** Shown instead of a page that could not be drawn. The usual cause is a new version of the tool: loading again mends it. */
export function Broken({ error }: { readonly error: Error }) {
  return (
    <div class="stack">
      <PageTitle>Something broke here</PageTitle>
      <p>
        What was stored is safe; what you were typing is not. Load the page again. If it breaks again, this is
        what it said:
      </p>
      <p class="soft small">
        <code>{error.message}</code>
      </p>
      <div class="row">
        <Button kind="do" onPress={() => location.reload()}>
          Load the page again
        </Button>
      </div>
    </div>
  )
}
