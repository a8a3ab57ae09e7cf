import { PageTitle } from '#web/parts/page-title.tsx'

export function HomePage() {
  return <PageTitle>Nothing on the bench yet</PageTitle>
}
