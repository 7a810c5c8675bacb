import { plainKey } from './plain'

interface BoardSentence {
  canal: string
  reference: string
  end: string | undefined
  estimate: boolean
  joins: string | undefined
  finalSize: string | undefined
  coronal: string | undefined
  was: string | undefined
  withheld: readonly string[]
}

function boardSentence(s: BoardSentence): string {
  if (s.end === undefined) return `${s.canal}: no length yet.`
  return [
    `${s.canal}: ends ${s.end} mm from ${s.reference}${s.estimate ? ', an estimate' : ''}`,
    ...(s.joins ? [`where it joins ${s.joins}`] : []),
    ...(s.was ? [`was ${s.was} mm`] : []),
    s.finalSize ? `final size ${s.finalSize}` : 'no final size yet',
    ...(s.coronal ? [`coronal instruments to ${s.coronal} mm`] : []),
    ...s.withheld.map((says) => `withheld: ${says.replace(/\.$/, '')}`),
  ]
    .join(', ')
    .concat('.')
}

export const board = {
  name: 'Depth board',
  canals: 'Canals',
  column: (canal: string, end: string, more: readonly (string | undefined)[]) =>
    `${canal}: ${[end ? `ends at ${end} mm` : 'no length yet', ...more].filter(Boolean).join(', ')}`,
  noLength: 'no length yet',
  joins: (main: string) => `joins ${main}`,
  was: (before: string) => `was ${before}`,
  caption: (widened: number, compared: boolean, oval: boolean) =>
    [
      oval || compared ? 'mm' : 'mm from the reference point',
      `width ×${widened}`,
      ...(oval ? ['dashed: wide diameter'] : []),
      ...(compared ? ['dotted: the version before'] : []),
    ].join(' · '),
  sentence: boardSentence,
}

export const stops = {
  instrument: 'Instrument',
  needleCeiling: 'Needle, never past',
  needleNow: 'Needle now, at most',
  atFirst: 'at first',
  after: (instrument: string) => `after ${instrument}`,
  toResistance: 'to resistance',
  caption: 'Stops in mm from the reference point, in order of use',
  legendLength: 'to length',
  legendResistance: 'to resistance, never past this stop',
  butToLength: (canals: readonly string[]) => `, ${canals.join(' and ')} to length`,
  none: 'not used in this canal',
  print: 'Print the stop table',
  paper: (iso: string, technique: string, kit: string) => `Tooth ${iso}: stops in mm. ${technique}. ${kit}.`,
}

export const cautions = {
  none: 'Nothing to caution about.',
  value: (value: number, unit: string | null) => (unit ? `${value} ${unit}` : String(value)),
  limit: (limit: number, unit: string | null) => `limit ${limit}${unit ? ` ${unit}` : ''}`,
  overridden: 'Let pass by a supervisor:',
  passed: (n: number) => `${n} let pass`,
  restsOn: (row: string) => `Rests on: ${row}`,
  notes: (n: number) => `${n} ${n === 1 ? 'note' : 'notes'}`,
  toPutRight: (n: number) => `${n} to put right`,
  cautions: (n: number) => `${n} ${n === 1 ? 'caution' : 'cautions'}`,
}

export const phase = plainKey
