import type { Caution } from '#api/contract/finding.ts'
import type { Claim } from '#api/judging/claim.ts'
import { referenceMean } from '#api/judging/claim-words.ts'
import type { GateFound, GateName } from '#api/judging/gates.ts'
import type { StratumClaim } from '#api/judging/stratum-claim.ts'
import { wordsOfFactor } from '#api/words/levels.ts'
import { counted, figure, listed, margin, percent, sentenceCase } from '#api/words/numbers.ts'

const titles: Readonly<Record<GateName, string>> = {
  rule: 'The rule and the work',
  plan: 'The plan is not done',
  controls: 'The test did not work',
  noise: 'Measuring error',
  alike: 'Not measured alike',
  units: 'What counts as one',
  losses: 'What was lost',
  journal: 'Changed after reading',
  reference: 'The reference itself',
}

/** What a reader must know beside the answer of one stratum: what its gates found, then what its answers add. */
export function cautionsOfClaim(claim: Claim, it: StratumClaim): Caution[] {
  const { look, confidence, gates } = claim
  const cautions: Caution[] = [...gates, ...it.gates]
    .filter((gate) => !gate.open || speaks(gate))
    .map((gate) => ({
      kind: gate.stops === 'nothing' ? 'doubt' : 'guard',
      title: gate.gate === 'plan' && gate.open ? 'More than was planned' : titles[gate.gate],
      text: gate.says,
    }))
  if (look > 1)
    cautions.push({
      kind: 'note',
      title: look === 2 ? 'A second look' : `Look ${look}`,
      text: `The rule was changed after something was read, so the limits are stricter, at ${percent(confidence)}.`,
    })
  cautions.push(...sessionCautions(claim, it), ...referenceCaution(claim, it), ...measuringError(it))
  const texts = new Set(it.levels.flatMap(({ answers }) => answers.flatMap((one) => one.cautions)))
  for (const text of texts) cautions.push({ kind: 'note', title: 'Please note', text })
  if (it.answer === 'not-settled')
    cautions.push({
      kind: 'note',
      title: 'Not settled is not “as good as”',
      text: 'No difference found does not mean equal.',
    })
  return cautions
}

/** Open gates that still have something to say: places that go with a level, sessions beyond the plan, losses. */
function speaks({ gate, says }: GateFound): boolean {
  if (gate === 'plan') return says.includes('beyond the plan')
  if (gate === 'losses' || gate === 'journal') return !says.startsWith('Nothing')
  return gate === 'units' && says.includes('always had the same')
}

function referenceCaution(claim: Claim, it: StratumClaim): Caution[] {
  const mean = referenceMean(it)
  if (mean === undefined || !it.reference) return []
  const words = wordsOfFactor(claim.factor)
  return [
    {
      kind: mean > 3 ? 'doubt' : 'note',
      title: 'The reference itself',
      text: `${sentenceCase(words.short(it.reference))} changed by ${figure(mean, 1)} ΔE00 itself.`,
    },
  ]
}

/** Too few sessions, and levels that are not in every one. */
function sessionCautions({ factor, trial: { record } }: Claim, it: StratumClaim): Caution[] {
  if (it.shape !== 'ladder' && it.shape !== 'arms') return []
  const blocks = [...it.blocks.planned, ...it.blocks.beyond]
  const words = wordsOfFactor(factor)
  const cautions: Caution[] = []
  if (blocks.length < 3)
    cautions.push({
      kind: 'guard',
      title: `${counted(blocks.length, { one: 'session is', many: 'sessions are' })} too few`,
      text: 'Fewer than three never make a claim.',
    })
  const names = new Map(record.sessions.map(({ id, label }) => [id, label]))
  const lacking = blocks.flatMap((block) => {
    const inside = new Set(
      it.rows.flatMap((row) => (row.block === block && row.value !== undefined ? [row.levelId] : [])),
    )
    const meant = new Set(it.rows.map(({ levelId }) => levelId))
    const missing = factor.levels.filter(({ id }) => meant.has(id) && !inside.has(id))
    const name = names.get(block)
    return missing.length === 0 || name === undefined
      ? []
      : [`session ${name} has no ${listed(missing.map(words.short))}`]
  })
  if (lacking.length > 0)
    cautions.push({
      kind: 'note',
      title: 'Not every level is in every session',
      text: `${sentenceCase(lacking.slice(0, 5).join('; '))}${lacking.length > 5 ? `; and ${lacking.length - 5} more` : ''}. A comparison uses only sessions that hold both.`,
    })
  return cautions
}

/** What unchanged skeins show, against the margin. */
function measuringError({ noise, leading }: StratumClaim): Caution[] {
  if (!noise) return []
  const size = figure(noise.floor, 1)
  if (leading?.margin !== undefined && noise.floor > leading.margin / 2)
    return [
      {
        kind: 'guard',
        title: 'Your way of measuring cannot see this margin',
        text: `Unchanged skeins seem to change by ${size} ΔE00 (${noise.from}), over half the margin of ${margin(leading.margin)}, so nothing can be said to be enough.`,
      },
    ]
  return [
    {
      kind: 'note',
      title: 'Measuring error',
      text: `Measuring is never exact, so even an unchanged skein seems to have changed a little: by ${size} ΔE00, from ${noise.from}. Smaller differences mean nothing.`,
    },
  ]
}
