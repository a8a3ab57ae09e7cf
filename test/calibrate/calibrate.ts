import { writeFileSync } from 'node:fs'
import { type Coverage, coverageStudy, pots } from './coverage-study.ts'
import { type Cell, grid, gridStudy, packetSpread } from './grid-study.ts'

/**
 * Are the verdicts as honest as they say? `npm run calibrate` makes up trials whose truth is known and counts how often
 * a level holds that should not. `npm run calibrate -- 2000` is a quick try; results are kept from 20,000 trials a cell on.
 */
const enough = 20_000
const trials = Number(process.argv[2] ?? enough)
const seed = Number(process.argv[3] ?? 1)
if (!(Number.isInteger(trials) && trials >= 100) || !Number.isInteger(seed)) {
  console.error('npm run calibrate -- [trials a cell, 100 or more] [seed]')
  process.exit(2)
}

const started = performance.now()
const cells = gridStudy(trials, seed)
const coverage = coverageStudy(trials, seed)
const twice = 2 * Math.sqrt((0.05 * 0.95) / trials)
const boundary = cells.filter((cell) => cell.extra === 1)
const faults = [
  ...boundary.filter((cell) => cell.floor === 0 && cell.rule > 0.05 + twice).map(wordsOf),
  ...boundary.filter((cell) => cell.floor > 0 && cell.floor <= 1 / 3 && cell.rule > 0.07).map(wordsOf),
  ...coverage
    .filter((it) => Math.abs(it.byPots - 0.95) > 0.015)
    .map((it) => `${it.sessions} sessions: interval holds the truth in ${percent(it.byPots)}`),
]

console.log(
  `${trials} made-up trials a cell, seed ${seed}; lengths in margins; reference loss 0, nothing lost unless said\n`,
)
table(
  'False “holds”: true extra loss = margin',
  boundary.filter((cell) => cell.lost === 0),
  [
    ['reference loses', (cell) => figure(cell.referenceLoss)],
    ['noise floor', (cell) => figure(cell.floor)],
    ['sessions', (cell) => String(cell.sessions)],
    ['the rule', (cell) => percent(cell.rule)],
    ['noise from four twins', (cell) => percent(cell.fourTwins)],
    ['raw alone', (cell) => percent(cell.raw)],
    ['every session looked at', (cell) => percent(cell.everySession)],
  ],
)
table(
  'True “holds”: no extra loss',
  cells.filter((cell) => cell.extra === 0 && cell.lost === 0 && cell.referenceLoss === 1),
  [
    ['noise floor', (cell) => figure(cell.floor)],
    ['sessions', (cell) => String(cell.sessions)],
    ['the rule', (cell) => percent(cell.rule)],
  ],
)
table<Coverage>('Pots and skeins: three skeins a pot, true extra loss = margin', coverage, [
  ['sessions', (it) => String(it.sessions)],
  ['95 % interval by pots', (it) => percent(it.byPots)],
  ['by skeins', (it) => percent(it.bySkeins)],
  ['false “holds” by pots', (it) => percent(it.falseByPots)],
  ['by skeins', (it) => percent(it.falseBySkeins)],
])
console.log(
  faults.length === 0
    ? `False “holds” stay within 5 % + ${percent(twice)} without noise and 7 % up to a floor of a third of the margin; intervals within 95 ± 1.5 %.`
    : `Not as promised:\n  ${faults.join('\n  ')}`,
)
console.log(`${((performance.now() - started) / 1000).toFixed(1)} s`)
if (trials >= enough) keep()
if (faults.length > 0) process.exitCode = 1

function wordsOf(cell: Cell): string {
  return `${cell.sessions} sessions, floor ${figure(cell.floor)}, reference ${figure(cell.referenceLoss)}, lost ${cell.lost}: holds in ${percent(cell.rule)}`
}

function table<Row>(
  title: string,
  rows: readonly Row[],
  columns: readonly [string, (row: Row) => string][],
): void {
  console.log(title)
  console.log(columns.map(([head]) => head).join(' | '))
  for (const row of rows) console.log(columns.map(([head, of]) => of(row).padStart(head.length)).join(' | '))
  console.log('')
}

function figure(value: number): string {
  return String(Number(value.toFixed(2)))
}

function percent(share: number): string {
  return `${(share * 100).toFixed(1)} %`
}

/** The figures as a page can show them: rows of numbers under one head, shares to four places. */
function keep(): void {
  const lines = cells.map((cell) =>
    JSON.stringify(Object.values(cell).map((it) => Number(it.toFixed(4)))).replaceAll(',', ', '),
  )
  const text = `{
  "trials": ${trials},
  "seed": ${seed},
  "packetSpread": ${packetSpread},
  "pots": ${spaced(pots)},
  "coverage": [
${coverage.map((it) => `    ${spaced(it)}`).join(',\n')}
  ],
  "columns": ${JSON.stringify(Object.keys(cells[0] ?? grid)).replaceAll(',', ', ')},
  "cells": [
${lines.map((line) => `    ${line}`).join(',\n')}
  ]
}
`
  writeFileSync(new URL('results.json', import.meta.url), text)
}

function spaced(it: Readonly<Record<string, number>>): string {
  const parts = Object.entries(it).map(([name, value]) => `"${name}": ${Number(value.toFixed(4))}`)
  return `{ ${parts.join(', ')} }`
}
