const KEYS: Readonly<Record<string, string>> = { '⌫': 'Delete', '½': 'and a half', '.': 'point' }

export const keypad = {
  name: 'Keys',
  says: (key: string) => KEYS[key] ?? key,
}

/** The sheet that canals are measured in, one after another. */
export const measure = {
  title: (canal: string, point: string) => (point ? `${canal}, from ${point}` : canal),
  close: 'Close',
  openOne: (canal: string) => `Measure ${canal}`,
  canals: 'Canal',
  chips: {
    pre_operative_image: 'Image',
    confirming_image: 'Confirm',
    apex_locator: 'Locator',
    direct_sight: 'Sight',
    ratio: 'Ratio',
    junction: 'Junction',
  },
  none: 'not measured',
  notSent: 'not sent yet',
  here: 'kept',
  keep: 'Keep',
  next: (canal: string) => `Keep, next: ${canal}`,
  plan: 'Keep and plan',
  number: 'Next number',
  kept: 'kept.',
  first: 'No reading yet',
  apart: (by: string) => (Number(by) === 0 ? 'All at one length' : `${by} mm apart`),
  gives: (method: string, typed: string | undefined, length: string) =>
    typed === undefined || typed === length ? `${method} ${length}` : `${method} ${typed} → ${length}`,
  agrees: (low: string, high: string) => `agrees at ${low}–${high}`,
  usual: (low: string, high: string) => `tooth usually ${low}–${high} mm`,
  unusual: (value: string, low: string, high: string) => `${value} mm? This tooth is usually ${low}–${high} mm long.`,
  allTheSame: (says: string) => says.replace('Keep', 'Keep it'),
  ruler: 'Readings of this canal',
}

/** The canals with their lengths, drawn. */
export const lengthsBoard = {
  name: 'Lengths, drawn',
  caption: 'mm from the reference point',
  measure: 'measure',
  column: (canal: string, state: string, length: string) =>
    `${canal}: ${[state, length && `${length} mm`].filter(Boolean).join(', ')}`,
}
