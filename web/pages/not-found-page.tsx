import { PageTitle } from '#web/parts/page-title.tsx'

/** An address at which nothing stands. */
export function NotFoundPage() {
  return (
    <div class="stack">
      <PageTitle>There is nothing at this address</PageTitle>
      <p>
        It may have been taken down, or a letter went missing on the way. <a href="/">Go home</a>, where every
        open trial is listed.
      </p>
    </div>
  )
}
