import './part-tabs.css'

export type PartTab = { readonly href: string; readonly label: string; readonly current: boolean }

/** The parts of a trial: a line of words under its title, on a phone a bar at the foot. `<PartTabs name="Parts of this trial" tabs={tabs} />` */
export function PartTabs({ name, tabs }: { readonly name: string; readonly tabs: readonly PartTab[] }) {
  return (
    <nav class="part-tabs" aria-label={name}>
      <ul class="plain-list">
        {tabs.map(({ href, label, current }) => (
          <li key={href}>
            <a href={href} aria-current={current ? 'page' : undefined}>
              {label}
            </a>
          </li>
        ))}
      </ul>
    </nav>
  )
}
