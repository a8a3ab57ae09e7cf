import './shell.css'
import { useState } from 'preact/hooks'
import { ErrorBoundary, LocationProvider, Route, Router } from 'preact-iso'
import { NotFoundPage } from '#web/pages/not-found-page.tsx'
import { Broken } from '#web/parts/broken.tsx'
import { SignedIn } from '#web/parts/signed-in.tsx'
import { SiteFooter } from '#web/parts/site-footer.tsx'
import { SiteHeader } from '#web/parts/site-header.tsx'
import { places } from '#web/places.ts'

/** What stays on the screen from page to page: the skip link, the bar at the top, the page itself, the foot. */
export function Shell() {
  const [broken, setBroken] = useState<Error | undefined>()
  return (
    <LocationProvider>
      <a class="shell-skip" href="#main">
        Skip to the page
      </a>
      <SiteHeader places={places} />
      <main id="main" class="shell-main page" tabIndex={-1}>
        {broken === undefined ? (
          <ErrorBoundary onError={setBroken}>
            <SignedIn>
              <Router>
                {[
                  ...places.map(({ path, page }) => <Route key={path} path={path} component={page} />),
                  <Route key="none" default component={NotFoundPage} />,
                ]}
              </Router>
            </SignedIn>
          </ErrorBoundary>
        ) : (
          <Broken error={broken} />
        )}
      </main>
      <SiteFooter />
    </LocationProvider>
  )
}
