/** A figure with its unit; a share has none. */
export function figureOf(value: number, unit: string): string {
  return unit === '1' || unit === '' ? String(value) : `${value} ${unit}`
}

export const rationale = {
  title: (canal: string, title: string) => `${canal}: ${title}`,
  ask: (canal: string, title: string, value: string, check: boolean) =>
    `${canal}, ${title}, ${value}${check ? ', reference value, check' : ''}: why`,
  inputs: 'What went in',
  rows: 'Rests on',
  close: 'Close',
  touch: 'Touch a number to see why.',
  legend: 'reference value, check',
  marks: (canal: string, marks: readonly { title: string; value: string }[]) =>
    `${canal}, ${marks.map(({ title, value }) => `${title}, ${value}`).join('; ')}: why`,
  coronal: 'coronal instruments, never past',
  recorded: (instrument: string) => `${instrument} stopped at`,
  end: 'ends at',
  stop: (instrument: string) => `stop of ${instrument}`,
  needle: 'needle, never past',
  needleBegins: 'needle at first, at most',
  needleNow: (after: string) => `needle after ${after}, at most`,
  size: 'advised sizes',
  makeRoom: 'stop of what makes room',
  band: (instrument: string) => `band of ${instrument}`,
  passes: 'passes of the series',
  expected: (instrument: string) => `expected depth of ${instrument}`,
}
