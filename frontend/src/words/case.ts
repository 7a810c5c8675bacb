const NOTATIONS: Record<string, string> = { iso_3950: 'ISO 3950', universal: 'Universal', palmer: 'Palmer' }

/** What an image's scale rests on. */
const SCALES: Readonly<Record<string, string>> = {
  fiducial: 'an object of known size, by the file',
  geometry: 'corrected by the file',
  magnification: 'corrected for a magnification',
  detector: 'the detector, not corrected',
  film: 'the film, not corrected',
  instrument: 'an instrument on the image',
  ruler: 'a ruler on the image',
  ball: 'a ball on the image',
}

const LEVELS = { low: 'low', moderate: 'moderate', high: 'high' } as const

export const cases = {
  practice: 'Practice',
  title: 'Cases',
  newCase: 'New case',
  empty: 'No case yet',
  emptySays: 'Open one for a training block, an extracted tooth or a patient under an alias.',
  tooth: (iso: string) => `Tooth ${iso}`,
  plan: (n: number | null) => (n === null ? '' : `plan ${n}`),
  more: 'Older cases',
}

export const newCase = {
  title: 'New case',
  alias: 'Patient alias',
  aliasHint:
    'A made-up word, such as Reed 12. Names, dates and numbers of real people do not belong here: this is a training tool, and a record that holds no identity cannot lose one.',
  noName: 'It is no name: take it',
  notation: 'Notation',
  notations: NOTATIONS,
  typeIt: 'Type the tooth instead',
  designation: 'Tooth',
  designationHint: {
    iso_3950: 'Two digits, 11 to 48.',
    universal: '1 to 32, or A to T.',
    palmer: 'Typed with the quadrant: UR, UL, LL, LR and 1 to 8, such as UR3.',
  } as Record<string, string>,
  starts: (canals: readonly string[]) =>
    canals.length === 1 ? `1 canal: ${canals[0]}` : `${canals.length} canals: ${canals.join(', ')}`,
  charted: 'No canal goes without saying: add them in the case.',
  usualLength: (low: string, high: string) => `usually ${low}–${high} mm long`,
  lengths: 'How long it is',
  lengthOf: (root: string | null) => (root === null ? 'Whole tooth' : `Root ${root}`),
  mean: (mean: string) => `mean ${mean} mm`,
  between: (low: string, high: string, band: string) => `${low}–${high} mm, ${band}`,
  names: (iso: string, universal: string, palmer: string) => `ISO ${iso} · Universal ${universal} · Palmer ${palmer}`,
  primary: 'A primary tooth can be charted here. It is not planned.',
  setting: 'Setting',
  canals: 'Canals to start with',
  canalsHint: 'Take away what you know is not there; others can be added later.',
  lookFor: 'Look for these too',
  add: (name: string) => `${name}: start with it`,
  share: (percent: string) => `in ${percent} of teeth`,
  noCanals: 'Choose at least one canal.',
  go: 'Open the case',
  measure: 'Open and measure',
  busy: 'Opening …',
}

export const chart = {
  title: (iso: string, alias: string) => `${iso} · ${alias}`,
  from: (point: string) => `from ${point}`,
  aliasWrong: 'Correct the alias',
  aliasInstead: (alias: string) => `Instead of ${alias}`,
  aliasHint: 'The old text goes, here and everywhere. The log keeps that it was changed, by whom and when.',
  aliasSave: 'Put this in its place',
  which: 'Which canal',
  choose: 'Choose …',
  otherCanal: 'Another, by name',
  name: 'Name of the canal',
  inRoot: 'Root it lies in',
  /** Read out alone. */
  length: 'Length',
  restsOn: (methods: readonly string[]) => `rests on ${methods.join(' and ')}`,
  estimatedBetween: (least: string, most: string, scale: string) =>
    `The tooth ends between ${least} and ${most} mm; scale: ${scale}.`,
  scaleBy: (code: string) => SCALES[code] ?? code,
  worked: 'in work',
  held: 'held',
  finished: 'finished',
  more: (canal: string) => `Readings and facts of ${canal}`,
  addReading: 'Add a reading',
  addCanal: 'Add a canal',
  removeCanal: 'Take this canal away',
  canal: (name: string) => `Canal ${name}`,
  planNew: 'Make a plan',
  planSee: 'See the plan',
  facts: 'About this canal',
  finding: 'Orifice',
  findings: { expected: 'expected', found: 'found', searched_not_found: 'searched, not found' } as Record<
    string,
    string
  >,
  findingHint: 'That a canal was searched and not found is recorded by a supervisor.',
  anatomy: 'Anatomy',
  anatomies: {
    usual: 'usual',
    fused_or_c_shaped: 'fused or C-shaped',
    charted_by_supervisor: 'unusual, canals charted by a supervisor',
  } as Record<string, string>,
  resorption: 'Image around the root’s end',
  resorptions: { none: 'no resorption', bone: 'bone resorbed', bone_and_root: 'bone and root resorbed' } as Record<
    string,
    string
  >,
  further: 'More, if measured',
  referencePoint: 'Reference point',
  pointMissing: (canal: string) => `Lengths of ${canal} are measured from where?`,
  pointWhy: 'Readings from different points never combine: choose it before the first one.',
  otherPoint: 'Another point',
  caseFacts: 'About this tooth',
  readings: 'Readings so far',
  noReadings: 'No reading yet.',
  counts: 'counts',
  countsNot: 'does not count',
  root: (name: string) => `Root ${name}`,
  pattern: 'How its canals run',
  patterns: {
    separate: 'separate: each to its own end',
    '2-1': '2–1: two orifices, one end',
    '1-2': '1–2: one orifice, two ends',
    '2-1-2': '2–1–2: join and part again',
    '1-2-1': '1–2–1: part and join again',
    unknown: 'not known yet',
  } as Record<string, string>,
  main: 'Goes to the end',
  proposed: (canal: string, reason: string) => `Proposed: ${canal}. ${reason}`,
  joinNeeded: (canal: string) =>
    `Where ${canal} joins is not measured yet. Until it is, only its glide path is planned.`,
}

export const reading = {
  method: 'How it was taken',
  short: {
    pre_operative_image: 'Pre-operative image',
    ratio: 'Ratio on the image',
    confirming_image: 'Confirming image',
    apex_locator: 'Apex locator',
    direct_sight: 'Direct sight',
    junction: 'Junction',
  } as Record<string, string>,
  tooth: 'Tooth on the image, reference point to apex',
  instrument: 'True length of the instrument',
  instrumentOnImage: 'Instrument on the image',
  toothOnImage: 'Tooth on the image',
  set: 'Stop that was set',
  tip: 'Tip of the instrument',
  tips: { short: 'short of the apex', at: 'at the apex', past: 'past the apex' } as Record<string, string>,
  by: 'By how much',
  read: 'First reading',
  repeat: 'Second reading',
  mark: 'Read at the mark of the',
  marks: { apex: 'apex', constriction: 'constriction' } as Record<string, string>,
  stable: 'The display held still, canal moist and not flooded, clear of metal',
  seen: 'Length with the tip seen at the end',
  afterFlaring: 'Taken after coronal flaring',
  from: (point: string) => `measured from ${point}`,
  junctionFrom: 'From the common end up to the junction',
  junctionMethod: 'How the junction was found',
  junctionMethods: {
    cone_mark: 'mark on a cone',
    two_instruments: 'two instruments touching',
    image_estimate: 'guessed from an image',
  } as Record<string, string>,
  guess: 'A guess from an image opens nothing yet.',
  busy: 'Sending …',
}

export const struck = {
  title: 'Readings that were struck',
  strike: 'Strike',
  ask: 'Why? It stays in the record and counts for nothing; the canal is planned again.',
  keep: 'Leave it',
  why: {
    wrong_canal: 'It is of another canal',
    mistyped: 'It was mistyped',
    not_so: 'It was not measured so',
  },
  by: (who: string, at: string, why: string) => `Struck by ${who}, ${at}: ${why.toLowerCase()}.`,
}

export const difficulty = {
  title: 'Difficulty of the case',
  levels: LEVELS,
  level: (level: keyof typeof LEVELS) => `difficulty ${LEVELS[level]}`,
  groups: { patient: 'Patient', diagnosis: 'Diagnosis', tooth: 'Tooth', additional: 'Further' },
  record: (n: number) => `Difficulty of the case${n > 0 ? `: ${n} recorded` : ''}`,
  recordHint: 'What you see in the patient and on the images. What follows from the plan is counted there.',
  alsoFromPlan: 'Worked out from the plan too; the higher level counts.',
  notRecorded: 'not recorded',
  option: (level: keyof typeof LEVELS, says: string) => `${LEVELS[level]}: ${says}`,
  fromPlan: 'worked out from the plan',
  recorded: 'recorded by a person',
}
