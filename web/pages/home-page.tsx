import { homeNow } from '#web/api/home.ts'
import { HomeBusy } from '#web/pages/home-busy.tsx'
import { HomeEmpty } from '#web/pages/home-empty.tsx'
import { PageTitle } from '#web/parts/page-title.tsx'
import { WhenLoaded } from '#web/parts/when-loaded.tsx'
import { useLoaded } from '#web/state/loaded.ts'

/** Home: what is due, the open trials and the newest finding; before the first trial, a doubt to start with. */
export function HomePage() {
  const home = useLoaded('home', homeNow)
  return (
    <>
      {home.kind === 'refused' ? <PageTitle>Home cannot be shown</PageTitle> : null}
      <WhenLoaded loaded={home}>
        {(value) =>
          value.open.length === 0 ? (
            <HomeEmpty onOpened={home.again} />
          ) : (
            <HomeBusy home={value} now={new Date()} />
          )
        }
      </WhenLoaded>
    </>
  )
}
