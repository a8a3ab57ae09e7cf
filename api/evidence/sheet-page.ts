import { html, raw } from 'hono/html'
import type { Sheet } from '#api/contract/evidence.ts'
import type { Finding } from '#api/contract/finding.ts'
import { ladderOf, wearOf } from '#api/contract/pictures-of-finding.ts'
import { labToSrgb } from '#api/science/colour/lab-to-srgb.ts'
import { ladderDrawing } from '#api/science/pictures/ladder-drawing.ts'
import type { LadderPicture } from '#api/science/pictures/ladder-picture.ts'
import type { Tone } from '#api/science/pictures/marks.ts'
import { escaped, svgOfMarks } from '#api/science/pictures/svg-of-marks.ts'
import { verdictMarkShape } from '#api/science/pictures/verdict-mark.ts'
import { verdictInWords } from '#api/science/verdicts/verdict.ts'
import { day } from '#api/words/dates.ts'
import { figure } from '#api/words/numbers.ts'
import { outcomeInSentence } from '#api/words/outcomes.ts'
import type { BesideSheet } from './beside-sheet.ts'
import { isGraded, sheetRows } from './sheet-of-finding.ts'
import { sideName } from './side-name.ts'

export type SheetFrame = {
  /** “Draft, not published” or “Evidence sheet, published 11 March 2026”. */
  readonly state: string
  /** Number and checksum of a frozen sheet. */
  readonly stamp: string
  readonly marks?: BesideSheet['marks']
  readonly others?: BesideSheet['others']
}

/** A sheet as one page of HTML without script; its pictures are SVG. */
export function sheetPage(
  sheet: Sheet,
  parts: readonly Finding[],
  { state, stamp, marks = [], others = [] }: SheetFrame,
) {
  const [finding] = parts
  if (!finding) throw new Error('A sheet is of one part at least.')
  return html`<!doctype html>
<html lang="en-GB">
  <head>
    <meta charset="utf-8" />
    <meta name="viewport" content="width=device-width, initial-scale=1" />
    <title>${sheet.headline} · Runs Clear</title>
    <link rel="icon" href="/icon.svg" type="image/svg+xml" />
    <link rel="stylesheet" href="/sheets/sheet.css" />
  </head>
  <body>
    <header>
      <p class="name">${raw(markSvg)}<span>Runs Clear</span></p>
      <p class="soft">${state}</p>
    </header>
    ${marks.length === 0 ? '' : html`<aside class="standing" aria-label="How it stands today">${marks.map((mark) => html`<p class="strong">${withDelta(mark)}</p>`)}</aside>`}
    <main>
      ${sheet.invented ? html`<p class="invented"><span class="strong">Invented data.</span> This sheet belongs to the example studio; it is no evidence.</p>` : ''}
      <div class="claim">${raw(verdictSvg(sheet))}<h1>${sheet.headline}</h1></div>
      <p class="lead">${withDelta(sheet.lead)}</p>
      <dl>
        ${pair('What', sheet.what)}${pair('Test', sheet.test)}${pair('How many', sheet.howMany)}
        ${pair('Worst result', sheet.worst, true)}${sheet.alsoTried ? pair('Also tried', sheet.alsoTried) : ''}${pair('Not tested', sheet.notTested)}
        ${sheet.dates === undefined ? '' : pair('Dates', sheet.dates)}${sheet.controls === undefined ? '' : pair('Controls', sheet.controls)}
        ${sheet.corrections?.length ? pair('Corrected', sheet.corrections.join(' ')) : ''}${sheet.changes?.length ? pair('Changed after reading', sheet.changes.join(' ')) : ''}
        <div><dt>Evidence</dt><dd>${raw(stepsSvg(sheet.evidence.step))}<br /><span class="strong">${sheet.evidence.step}</span>: ${sheet.evidence.why}</dd></div>
      </dl>
      ${parts.map((part) => partSections(part, sheet.viewedUnder))}
      <section>
        <h2>How this was worked out</h2>
        <p class="small">${withDelta(sheet.rule)}</p>
        <p class="small">${withDelta(sheet.method.join(' '))}${parts.some(({ skeins }) => skeins.some((skein) => skein.after !== null)) ? ' Change grades are grey-scale ratings calculated from CIELAB (A05 formula).' : ''}</p>
        ${sheet.cautions.length > 0 ? html`<ul class="small">${sheet.cautions.map((caution) => html`<li>${withDelta(caution)}</li>`)}</ul>` : ''}
      </section>
    </main>
    ${others.length === 0 ? '' : otherSheets(others)}
    <footer>
      <p><span class="strong">Home test, not certified. This covers only what was tested.</span> Dye pots are not for food. Labelling law differs by country; this is not legal advice.</p>
      <p>Print and screen change colours; the numbers are the evidence. ${stamp}</p>
      <p class="screen"><a href="/trials/${finding.trialId}/evidence${finding.within ? `?within=${finding.within.levelId}` : ''}">Back to the trial</a></p>
    </footer>
  </body>
</html>`
}

/** Nobody may show the one of several sheets that pleases, and be silent about the rest. */
function otherSheets(others: BesideSheet['others']) {
  return html`<aside class="small" aria-label="Other sheets of this trial">
      <h2>Other sheets of this trial</h2>
      <ul>${others.map(({ headline, answer, madeAt, path, superseded }) => html`<li><a href="${path}">${withDelta(headline)}</a> (${verdictInWords(answer)}, ${day(madeAt)}${superseded ? ', superseded' : ''})</li>`)}</ul>
    </aside>`
}

/** The picture, the pair and every skein of one part of a sheet, named where there are several. */
function partSections(finding: Finding, viewedUnder: string | undefined) {
  const rows = sheetRows(finding)
  const graded = finding.outcome !== null && isGraded(finding.outcome)
  const limits = rows.find((row) => row.limits.length > 0)?.limits ?? []
  const level = finding.levels.find(
    (it) => it.id === (finding.verdict?.levelId ?? finding.verdict?.subjectId),
  )
  const ladder = shortLabels(ladderOf(finding))
  return html`${finding.within ? html`<h2>${finding.within.spokenOf}</h2>` : ''}
      <div class="pictures">
        <section>
          <h2>${ladder ? withDelta([ladder.title, finding.outcome?.unit].filter(Boolean).join(', ')) : 'No picture yet'}</h2>
          <div class="picture">${ladder ? raw(svgOfMarks(ladderDrawing(ladder, { width: 560, height: 400 }), { width: 560, height: 400, finding: ladder.finding, tones, family: 'inherit', id: `ladder-${finding.within?.levelId ?? ''}` })) : html`<p>${finding.waitsFor ?? ''}</p>`}</div>
        </section>
        ${level ? pairSection(level, finding, viewedUnder) : ''}
      </div>
      <section>
        <h2>${withDelta(`Every skein, ${finding.outcome ? outcomeInSentence(finding.outcome.key) : 'result'}${finding.outcome?.unit ? ` in ${finding.outcome.unit}` : ''}`)}</h2>
        <div class="scroll" tabindex="0" role="region" aria-label="Every skein${finding.within ? ` ${finding.within.spokenOf}` : ''}">
          <table class="fit">
            <thead>
              <tr>
                <th scope="col">${finding.factor?.label ?? 'Level'}</th>
                ${finding.sessions.map((session, i) => html`<th scope="col">${i === 0 ? `session ${session.label}` : session.label}</th>`)}
                ${graded ? '' : html`<th scope="col">mean</th><th scope="col">extra, ${interval(finding)}</th>`}
                ${limits.map((limit) => html`<th scope="col">${sideName(limit)}</th>`)}
              </tr>
            </thead>
            <tbody>
              ${rows.map(
                (row) => html`<tr${row.chosen ? raw(' class="chosen"') : ''}>
                  <td>${row.level.tick}</td>
                  ${row.bySession.map((cell) => html`<td>${cell}</td>`)}
                  ${graded ? '' : html`<td class="strong">${row.mean}</td><td>${row.extra}</td>`}
                  ${limits.map((column) => {
                    const limit = row.limits.find((it) => it.key === column.key)
                    if (!limit) return html`<td>–</td>`
                    return limit.broken
                      ? html`<td><span class="outside">${limit.worstText}</span></td>`
                      : html`<td>${limit.worstText}</td>`
                  })}
                </tr>`,
              )}
            </tbody>
          </table>
        </div>
        ${limits.length > 0 ? html`<p class="small"><span class="outside">underlined</span>: outside the limits of the rule (${limits.map((limit) => `${limit.label} ${limit.limit}`).join(', ')}). ${noiseLine(finding)}</p>` : html`<p class="small">${noiseLine(finding)}</p>`}
      </section>
      ${wearSection(finding)}`
}

/** A sheet is narrow: the short labels. */
function shortLabels(ladder: LadderPicture | undefined): LadderPicture | undefined {
  if (!ladder) return undefined
  return {
    ...ladder,
    levels: ladder.levels.map((level) => ({ ...level, label: level.short ?? level.label })),
    brackets: ladder.brackets.map((bracket) => ({ ...bracket, label: bracket.short ?? bracket.label })),
    ...(ladder.margin
      ? { margin: { ...ladder.margin, label: ladder.margin.short ?? ladder.margin.label } }
      : {}),
  }
}

const tones: Record<Tone, string> = {
  ink: '#24221E',
  soft: '#57534A',
  line: '#827D72',
  hair: '#D3D0C7',
  accent: '#5A2D6E',
  wool: '#FFFFFF',
  grey: '#ABABAB',
  'grey-ink': '#24221E',
}

const markSvg = `<svg width="66" height="16" viewBox="0 0 66 16" aria-hidden="true"><line x1="0" y1="8" x2="66" y2="8" stroke="#24221E" stroke-width="1.5"/>${[
  1, 0.62, 0.26, 0,
]
  .map(
    (strength, i) =>
      `<circle cx="${9 + i * 16}" cy="8" r="6" fill="#fff"/><circle cx="${9 + i * 16}" cy="8" r="6" fill="#24221E" fill-opacity="${strength}" stroke="#24221E" stroke-width="1.5"/>`,
  )
  .join('')}</svg>`

function verdictSvg({ answer }: Sheet): string {
  const { margin, from, middle, to } = verdictMarkShape(answer)
  return `<svg width="64" height="40" viewBox="0 0 32 20" role="img" aria-label="${escaped(verdictInWords(answer))}"><g stroke="#24221E" fill="none"><line x1="${margin}" y1="0" x2="${margin}" y2="20" stroke-width="2.4"/><path d="M${from} 10H${to}M${from} 6.4v7.2M${to} 6.4v7.2" stroke-width="1.5"/></g><circle cx="${middle}" cy="10" r="3.2" fill="#24221E"/></svg>`
}

function stepsSvg(step: string): string {
  const reached = Number(step.slice(1))
  const knots = [0, 1, 2, 3, 4].map(
    (it) =>
      `<circle cx="${14 + 68 * it}" cy="14" r="${it === reached ? 9 : 5}" fill="${it <= reached ? '#24221E' : '#fff'}" stroke="#24221E" stroke-width="1.75"/><text x="${14 + 68 * it}" y="42" text-anchor="middle" font-size="14" fill="#24221E" font-weight="${it === reached ? 700 : 500}">E${it}</text>`,
  )
  return `<svg width="300" height="48" viewBox="0 0 300 48" role="img" aria-label="Evidence step ${escaped(step)} of E0 to E4"><line x1="14" x2="286" y1="14" y2="14" stroke="#24221E"/>${knots.join('')}</svg>`
}

function pairSection(
  level: Finding['levels'][number],
  { outcome }: Finding,
  viewedUnder: string | undefined,
) {
  if (!level.before || !level.after)
    return html`<section><h2>${level.words}</h2><p class="small">No colour measured, so none is shown.</p></section>`
  const [before, after] = [labToSrgb(level.before), labToSrgb(level.after)]
  const beyond = !before.inGamut || !after.inGamut
  const yarn = `<svg viewBox="0 0 200 92" preserveAspectRatio="none" role="img" aria-label="before and after, side by side"><path d="${beyond ? 'M22 0H100V92H0V22Z' : 'M0 0H100V92H0Z'}" fill="${before.hex}"/><rect x="100" width="100" height="92" fill="${after.hex}"/></svg>`
  const lab = ({ L, a, b }: { L: number; a: number; b: number }) =>
    [L, a, b].map((it) => figure(it, 1)).join(', ')
  return html`<section>
    <h2>${level.words}</h2>
    <div class="pair">${raw(yarn)}</div>
    <p class="ends"><span>before</span><span>after ${outcome?.wearInWords ?? ''}</span></p>
    <p>${level.withinNoise ? 'No change that can be told.' : `${capital(level.direction.join(', '))}.`}${beyond ? ' Cut corner: the true colour is beyond this screen.' : ''}</p>
    <p class="small">L* a* b* ${lab(level.before)} before; ${lab(level.after)} after (${viewedUnder ?? 'illuminant and observer not recorded'}; means of ${level.skeins} skeins).</p>
  </section>`
}

function wearSection(finding: Finding) {
  const wear = wearOf(finding)
  if (!wear || finding.curve.every((group) => group.points.length < 2)) return ''
  const amounts = [
    ...new Set(finding.curve.flatMap((group) => group.points.map((point) => point.amount))),
  ].sort((a, b) => a - b)
  return html`<section>
    <h2>${wear.title}</h2>
    <div class="scroll"><table>
      <thead><tr><th scope="col">Level</th>${amounts.map((at) => html`<th scope="col">after ${at}</th>`)}</tr></thead>
      <tbody>${wear.groups.map((group) => html`<tr><td>${group.label}</td>${amounts.map((at) => html`<td>${group.points.find((point) => point.at === at)?.mean.toFixed(2) ?? '–'}</td>`)}</tr>`)}</tbody>
    </table></div>
  </section>`
}

function pair(term: string, words: string, strong = false) {
  return html`<div><dt>${term}</dt><dd${strong ? raw(' class="strong"') : ''}>${withDelta(words)}</dd></div>`
}

function noiseLine({ noise }: Finding): string {
  return noise ? `Measuring error ${figure(noise.floor)} (${noise.from}).` : ''
}

function interval({ rule, verdict }: Finding): string {
  const confidence = verdict?.estimate?.confidence ?? 2 * (rule?.confidence ?? 0.95) - 1
  return `${Math.round(confidence * 1000) / 10} % interval`
}

/** ΔE00 with its index below the line. */
function withDelta(words: string) {
  const parts = words.split('ΔE00')
  return parts.map((part, i) => (i === 0 ? html`${part}` : html`ΔE<sub>00</sub>${part}`))
}

const capital = (words: string) => words.charAt(0).toUpperCase() + words.slice(1)
