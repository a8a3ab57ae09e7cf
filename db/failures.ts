import { Problem } from '#api/contract/problem.ts'
import { isDatabaseAway } from './database-away.ts'

/** The code of a database's error (SQLSTATE), whichever of the two databases it came from. */
function codeOf(error: unknown): string | undefined {
  const code = (error as { code?: unknown } | null)?.code
  return typeof code === 'string' ? code : undefined
}

const names: Record<string, string> = {
  rule_trial_id_edition_key: 'This edition of the rule is already there.',
  factor_trial_id_key_key: 'This trial already has a factor of this name.',
  skein_trial_id_code_key: 'This trial already has a skein of this code.',
  session_label: 'This trial already has a session of this name.',
  vessel_session_id_stage_label_key: 'This session already has a vessel of this name at this stage.',
  placement_skein_id_vessel_id_key: 'This skein already lies in this vessel.',
  treatment_factor_id_session_id_key: 'This session already has a level of this factor.',
  treatment_factor_id_vessel_id_key: 'This vessel already has a level of this factor.',
  treatment_factor_id_skein_id_key: 'This skein already has a level of this factor.',
  reading_current:
    'There is already a reading of this skein in this sitting, with this placing and wear. Correct it instead.',
  outcome_current: 'There is already an outcome of this kind for this piece. Correct it instead.',
  rinse_current: 'There is already a rinse of this number for this piece. Correct it instead.',
  recipe_name_edition_key: 'This edition of the recipe is already there.',
}

/** What the database refused, as the refusal that a person can read; undefined when it is a bug. */
export function refusalByDatabase(error: unknown): Problem | undefined {
  if (isDatabaseAway(error)) {
    return new Problem(
      'database-away',
      'The database cannot be reached just now. Nothing that was kept is lost. Wait a little and send the same again.',
    )
  }
  const code = codeOf(error)
  const constraint = (error as { constraint?: string } | null)?.constraint ?? ''
  if (code === '23505') {
    if (constraint.endsWith('supersedes_id_key')) {
      return new Problem('already-there', 'This was already corrected. Correct the correction instead.')
    }
    return new Problem(
      'already-there',
      names[constraint] ?? 'Something of this name or place is already there.',
    )
  }
  if (code === '23503') {
    const detail = (error as { detail?: string }).detail ?? ''
    if (detail.includes('still referenced')) {
      return new Problem('still-in-use', 'Other records need this one, so it stays.')
    }
    const column = /Key \(([^)]+)\)/.exec(detail)?.[1]?.split(',')[0]
    const pointer = column
      ? `#/${column.replace(/_([a-z])/g, (_, letter: string) => letter.toUpperCase())}`
      : '#'
    return new Problem('at-fault', 'This names something that is not there.', [
      { pointer, detail: 'There is nothing under this id.' },
    ])
  }
  if (
    code === '23514' ||
    code === '23502' ||
    code === '22003' ||
    code === '22007' ||
    code === '22008' ||
    code === '22009' ||
    code === '22P02' ||
    code === '22P05' ||
    code === '22021'
  ) {
    return new Problem('at-fault', 'Some of this is outside what can be kept.', [
      { pointer: '#', detail: `The database refuses this${constraint ? ` (${constraint})` : ''}.` },
    ])
  }
  // The pool's own words: somebody's long work, such as a table of 100,000 rows, holds the embedded database.
  if (code === undefined && (error as Error | null)?.message === 'timeout exceeded when trying to connect') {
    return new Problem(
      'busy',
      'The records are busy with something long, such as a large table. Try again in a minute; nothing is lost.',
    )
  }
  if (code === 'RC001')
    return new Problem('rule-locked', 'The rule is locked. Make a new edition, with its reason.')
  return undefined
}
