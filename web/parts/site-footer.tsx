import './site-footer.css'
import licence from '@fontsource-variable/ysabeau-office/LICENSE?url'

/** The foot of every page: what a home test is, and the licence of the letters. */
export function SiteFooter() {
  return (
    <footer class="site-footer page">
      <p>
        Home tests, not certified: a claim covers only what was tested.{' '}
        <a href="/method">How it is worked out</a>. Set in Ysabeau Office (
        <a href={licence} target="_blank" rel="license noopener">
          its licence
        </a>
        ).
      </p>
    </footer>
  )
}
