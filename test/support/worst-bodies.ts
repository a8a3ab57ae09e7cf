const most = 8 * 1024 * 1024 - 1024
const filled = (sign: string, length = most): string => sign.repeat(Math.floor(length / sign.length))
const json = (value: unknown): string => JSON.stringify(value)

/** A table of so many columns and rows, every cell alike. */
function grid(columns: number, rows: number, cell: string, heading = (i: number) => `h${i}`): string {
  const row = Array.from({ length: columns }, () => cell).join()
  const head = Array.from({ length: columns }, (_, i) => heading(i)).join()
  return [head, ...Array.from({ length: rows }, () => row)].join('\n')
}

/** Objects of so many keys, no key like another. */
function strangeKeys(objects: number, keys: number): string {
  let count = 0
  const one = () => `{${Array.from({ length: keys }, () => `"${(count++).toString(36)}a":0`).join()}}`
  return `[${Array.from({ length: objects }, one).join()}]`
}

/** The worst texts of a table or an instrument’s file: what would take long in one place or another. */
export const worstTexts: Readonly<Record<string, string>> = {
  'a heading of 160,000 spaces': `L0${filled(' ', 160_000)}x,a0\n50,1`,
  'a heading of digits': `${filled('1', 1_000_000)}x,a0\n50,1`,
  'a heading of opening brackets': `L0,${filled('[(', 160_000)}\n50,1`,
  commas: filled(','),
  'commas under two headings': `L0,a0\n50,1\n${filled(',')}`,
  semicolons: filled(';'),
  quotes: filled('"'),
  'quotes after a letter': `L0,a0\n50,a${filled('"')}`,
  'quotes between tabs': `L0\ta0\n50\ta${filled('"')}`,
  'quoted quotes': `L0,a0\n50,"${filled('""')}"`,
  newlines: filled('\n'),
  'newlines under a row': `L0,a0\n50,1${filled('\n')}`,
  'carriage returns': filled('\r'),
  'line separators': filled('\u2028', most / 3),
  'a row of one letter, often': `L0\n${filled('5\n')}`,
  'blank rows': `L0,a0\n50,1\n${filled(',\n')}`,
  'one cell': `L0,a0\n50,${filled('x')}`,
  'one quoted cell': `L0,a0\n50,"${filled('x')}"`,
  'one cell of spaces': `L0,a0\n50,1${filled(' ')}1`,
  'a number of a million digits': `L0,a0\n${filled('1', 1_000_000)}x,1`,
  'levels with spaces in them': grid(2, 2000, `1${filled(' ', 1900)}1`, (i) => ['steam_min', 'run'][i] ?? ''),
  'sessions of digits': grid(2, 2000, `${filled('1', 1900)}x`, (i) => ['run', 'place'][i] ?? ''),
  'a unit of many words': `temperature [${filled(' per', 280)}],L0\n50,1`,
  '190 columns and 20,000 rows': grid(190, 20_000, '5'),
  '15 columns and 99,000 rows that are no numbers': grid(
    15,
    99_000,
    'x',
    (i) => ['L0', 'a0', 'b0'][i] ?? `h${i}`,
  ),
  '99 columns and 15,000 rows, one of them no number': grid(99, 15_000, 'x', (i) => ['pH'][i] ?? `h${i}`),
  'a CGATS file of quotes': `CGATS.17\nBEGIN_DATA_FORMAT\nSAMPLE_ID LAB_L\nEND_DATA_FORMAT\nBEGIN_DATA\n"${filled('a', 1_900_000)}`,
  'a file of many samples': grid(4, 130_000, 'x,50,1', (i) => ['SAMPLE_ID', 'L*', 'a*', 'b*'][i] ?? ''),
}

/** The worst bodies of JSON, whatever address they are sent to. */
export const worstJson: Readonly<Record<string, string>> = {
  'lists in lists': `${'['.repeat(2_000_000)}${']'.repeat(2_000_000)}`,
  'objects in objects': `${'{"a":'.repeat(800_000)}0${'}'.repeat(800_000)}`,
  'empty objects': `[${filled('{},')}{}]`,
  'empty lists': `{"items":[${filled('[],')}[]]}`,
  'wrong items': `{"items":[${filled('0,')}0]}`,
  'as many wrong items as one list may hold': `{"items":[${filled('0,', 200_000)}0]}`,
  'wrong spots': json({ items: Array.from({ length: 5000 }, () => ({ spots: Array(300).fill(0) })) }),
  'strange keys': strangeKeys(8000, 100),
  'strange keys of one object': strangeKeys(1, 700_000),
  'strange keys below one list': `{"items":${strangeKeys(80_000, 8)}}`,
  'wrong cells': json({ cells: Array.from({ length: 100_000 }, () => Array(15).fill(true)) }),
  'long cells': json({ cells: [['L0'], [filled('x', most - 100)]] }),
  'one text': json({ title: filled('x', most - 100) }),
  'a title of spaces': json({ title: `x${filled(' ', most - 100)}x`, question: 'y' }),
  'a number of a million digits': json({
    text: `L0\n${filled('1', 1_000_000)}`,
    label: filled('1', 1_000_000),
  }),
}
