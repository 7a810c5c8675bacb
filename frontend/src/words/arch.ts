const QUADRANTS = { 1: 'Upper right', 2: 'Upper left', 3: 'Lower left', 4: 'Lower right' } as const

const BY_PLACE = [
  'central incisor',
  'lateral incisor',
  'canine',
  'first premolar',
  'second premolar',
  'first molar',
  'second molar',
  'third molar',
]

/** The arch that a tooth is picked on; its sides are the patient's. */
export const arch = {
  tooth: 'Tooth',
  quadrants: QUADRANTS,
  range: (first: string, last: string) => `${first}–${last}`,
  all: 'All teeth',
  /** Read out, for a permanent tooth by ISO 3950. */
  name: (iso: string) =>
    `${iso}, ${QUADRANTS[Number(iso[0]) as keyof typeof QUADRANTS].toLowerCase()} ${BY_PLACE[Number(iso[1]) - 1]}`,
}
