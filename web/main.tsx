import './style/tokens.css'
import './style/fonts.css'
import './style/base.css'
import './style/print.css'
import { render } from 'preact'
import { Shell } from '#web/parts/shell.tsx'

const page = document.getElementById('page')
if (page === null) throw new Error('index.html has no element with the id “page”')
render(<Shell />, page)
