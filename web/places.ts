import type { ComponentType } from 'preact'
import { lazy } from 'preact-iso'

/** A page of the site: its address, and its word in the bar at the top if it stands there. */
export type Place = {
  readonly path: string
  readonly label?: string
  readonly page: ComponentType
}

const calculatorsPage = lazy(async () => (await import('#web/pages/calculators-page.tsx')).CalculatorsPage)

/**
 * Every page, in the order of the bar. A page is loaded when it is first asked for.
 * A new page is one line here; without a label it has an address and does not stand in the bar.
 */
export const places: readonly Place[] = [
  { path: '/', label: 'Home', page: lazy(async () => (await import('#web/pages/home-page.tsx')).HomePage) },
  { path: '/start', page: lazy(async () => (await import('#web/pages/start-page.tsx')).StartPage) },
  {
    path: '/trials/:id/:part?',
    page: lazy(async () => (await import('#web/pages/trial-page.tsx')).TrialPage),
  },
  { path: '/calculators', label: 'Calculators', page: calculatorsPage },
  { path: '/calculators/:name', page: calculatorsPage },
  {
    path: '/settings',
    label: 'Settings',
    page: lazy(async () => (await import('#web/pages/settings-page.tsx')).SettingsPage),
  },
  {
    path: '/method',
    page: lazy(async () => (await import('#web/pages/method-page.tsx')).MethodPage),
  },
  {
    path: '/sign-in',
    page: lazy(async () => (await import('#web/pages/sign-in-page.tsx')).SignInPage),
  },
  {
    path: '/problems/:name',
    page: lazy(async () => (await import('#web/pages/problem-page.tsx')).ProblemPage),
  },
]
