import { type Kysely, sql } from 'kysely'
import { Problem } from '#api/contract/problem.ts'
import type { Database } from '#db/tables.ts'

/**
 * Refuses a skein that would have two levels of one factor: two vessels at the factor's stage that were given
 * different ones. A level given to the skein itself settles it.
 */
export async function refuseTwoLevels(
  tx: Kysely<Database>,
  { skeinIds }: { readonly skeinIds: readonly string[] },
): Promise<void> {
  const { rows } = await sql<{ code: string; key: string }>`
    select k.code, f.key
    from placement p
    join skein k on k.id = p.skein_id
    join vessel v on v.id = p.vessel_id
    join factor f on f.trial_id = k.trial_id and f.stage = v.stage
    left join treatment tv on tv.factor_id = f.id and tv.vessel_id = v.id
    left join treatment ts on ts.factor_id = f.id and ts.session_id = v.session_id
    where p.skein_id = any(${[...skeinIds]}::uuid[])
      and not exists (select from treatment own where own.factor_id = f.id and own.skein_id = k.id)
    group by k.id, k.code, f.id, f.key
    having count(distinct coalesce(tv.level_id, ts.level_id)) > 1
    order by k.code limit 1`.execute(tx)
  const [twice] = rows
  if (!twice) return
  throw new Problem('at-fault', `Skein ${twice.code} would have two levels of ${twice.key}.`, [
    {
      pointer: '#',
      detail: `It lies in two vessels of one stage that were given different levels of ${twice.key}.`,
    },
  ])
}
