import '#web/pages/settings/settings.css'
import { instrumentsOf } from '#web/api/instruments.ts'
import { settingsOf } from '#web/api/settings.ts'
import { Instruments } from '#web/pages/settings/instruments.tsx'
import { Units } from '#web/pages/settings/units.tsx'
import { UsualValues } from '#web/pages/settings/usual-values.tsx'
import { PageTitle } from '#web/parts/page-title.tsx'
import { WhenLoaded } from '#web/parts/when-loaded.tsx'
import { useLoaded } from '#web/state/loaded.ts'

/** Settings of the studio: its units, its instruments and their noise, and what it usually has. */
export function SettingsPage() {
  const loaded = useLoaded('settings', async (signal) => {
    const [settings, instruments] = await Promise.all([settingsOf(signal), instrumentsOf(signal)])
    return { settings, instruments }
  })
  return (
    <div class="stack-wide">
      <PageTitle>Settings</PageTitle>
      <WhenLoaded loaded={loaded}>
        {({ settings, instruments }) => (
          <>
            <Units settings={settings} onKept={loaded.again} />
            <Instruments instruments={instruments} onKept={loaded.again} />
            <UsualValues settings={settings} onKept={loaded.again} />
          </>
        )}
      </WhenLoaded>
    </div>
  )
}
