const level = 'id position label value isReference'

/** The order in which the first version wrote the keys of a sheet’s body, by where they stand. */
const orders: Readonly<Record<string, string>> = {
  '': 'sheet finding',
  sheet:
    'title headline lead answer what test howMany worst notTested evidence rule method cautions invented',
  'sheet.evidence': 'step why',
  finding:
    'trialId title question invented pattern rule lockedBefore ruleInWords factor within outcome verdict waitsFor steps levels sessions skeins noise curve cautions method counts notTested evidenceStep',
  'finding.rule':
    'id version createdAt trialId edition conditions method plannedSessions looks confidence lockedAt reason',
  'finding.factor': 'id key label unit kind stage',
  'finding.within': 'factor levelId label levels',
  'finding.within.levels': level,
  'finding.outcome': 'key label unit wear wearInWords',
  'finding.verdict':
    'answer levelId subjectId headline lead counts look sessionsIn sessionsPlanned estimate window windowText sessionsMore settle',
  'finding.verdict.estimate': 'value lower upper confidence margin unit',
  'finding.verdict.window': 'from to',
  'finding.verdict.window.from': level,
  'finding.verdict.window.to': level,
  'finding.steps':
    'levelId label reference n mean extra lower upper netExtra netUpper limits answer afterStop says',
  'finding.steps.limits': 'key label limit end worst worstText all met broken missing',
  'finding.levels': `${level} tick words skeins vessels sessions lost missing mean sd lower upper before after direction withinNoise worstGrade`,
  'finding.sessions': 'id label heldOn',
  'finding.skeins':
    'id code levelId role status lostReason sessionId session vesselId vessel place before after value grade side readings spots',
  'finding.skeins.side.*': 'value text',
  'finding.noise': 'floor rms from n',
  'finding.curve': 'levelId points',
  'finding.curve.points': 'amount n mean lower upper',
  'finding.cautions': 'kind title text',
  'finding.counts': 'skeins vessels sessions readings spots lost rows',
  'finding.evidenceStep': 'step why',
}

/**
 * A body as the first version wrote it: its checksum was taken of that text, and the database gives keys back in an order
 * of its own. What came out of the database then (conditions, wear) keeps the order that it has.
 */
export function inFirstOrder(body: unknown): unknown {
  return ordered(body, '', limitsOf(body))
}

function ordered(value: unknown, place: string, sides: readonly string[]): unknown {
  if (Array.isArray(value)) return value.map((it) => ordered(it, place, sides))
  if (typeof value !== 'object' || value === null) return value
  const isSides = place === 'finding.skeins.side'
  const known = isSides ? sides : (orders[place]?.split(' ') ?? [])
  const rank = (key: string) => (known.includes(key) ? known.indexOf(key) : known.length)
  return Object.fromEntries(
    Object.entries(value)
      .sort(([a], [b]) => rank(a) - rank(b))
      .map(([key, it]) => [
        key,
        ordered(it, isSides ? `${place}.*` : `${place}.${key}`.replace(/^\./, ''), sides),
      ]),
  )
}

type Bounded = { readonly steps?: readonly { readonly limits?: readonly { readonly key: string }[] }[] }

/** The limits of a rule in the order of its conditions, which the steps have. */
function limitsOf(body: unknown): readonly string[] {
  const { finding } = body as { readonly finding?: Bounded }
  return finding?.steps?.[0]?.limits?.map(({ key }) => key) ?? []
}
