import { openDatabase } from '#db/open-database.ts'
import { readSettings } from './config.ts'
import { plainly } from './plainly.ts'
import { rebuildResults } from './results/rebuild-results.ts'

/** `npm run rebuild`: works out anew everything that is derived from the measured rows. Stop the tool first. */
await plainly(async () => {
  const { DATABASE_URL, DATA_DIR } = readSettings(process.env)
  const opened = await openDatabase(DATABASE_URL ? { databaseUrl: DATABASE_URL } : { dataDir: DATA_DIR })
  try {
    const { trials, skeins, readings } = await rebuildResults(opened.db)
    console.log(`Worked out anew: ${trials} trials, ${skeins} skeins, ${readings} readings.`)
  } finally {
    await opened.close()
  }
})
