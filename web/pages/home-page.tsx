import { HomeEmpty } from '#web/pages/home-empty.tsx'

/** Home: what is due, the open trials and the newest finding; before the first trial, a doubt to start with. */
export function HomePage() {
  return <HomeEmpty />
}
