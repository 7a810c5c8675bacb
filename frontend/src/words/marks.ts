interface Bounds {
  readonly object_least_mm: number
  readonly object_most_mm: number
  readonly pixel_least_mm: number
  readonly pixel_most_mm: number
}

const within = (percent: number | undefined) => (percent === undefined ? 'within' : `${percent}\u00a0% within`)

export const marks = {
  title: 'Marks on an image',
  mark: 'Mark and measure',
  /** Read out alone. */
  canBeMarked: 'What can be marked',
  board: 'Image',
  keys: 'Arrow keys move the mark that is picked, or the image; plus and minus zoom, zero shows the whole.',
  nearer: 'Nearer',
  farther: 'Farther',
  whole: 'Whole image',
  noImage: 'This image is neither on this phone nor on the server.',
  struck: (why: string, by: string) =>
    `This image was struck: ${why}. ${by}. No length is taken from it any more. Your marks stay here, and can be kept for others to see. Take a new image to measure on.`,
  moved: (from: string, to: string, by: string) =>
    `This image was put from ${from} to ${to}. ${by}. Your marks stay as they are: look which canal they are of before you keep them.`,
  removed:
    'This image was removed before your marks on it were kept. Without it nothing can be measured: take a new one and mark it.',
  noPicture: 'This browser cannot draw the image. Once it is on the server it can be marked.',
  scale: 'Scale',
  none: 'not marked',
  begun: 'begun',
  marked: 'marked',
  ofFile: 'of the file',
  tip: 'tip',
  endAt: (said: string) => `ends ${said}`,
  tipExpected: (said: string) => `by its stop ${said}`,
  undo: 'Undo',
  remove: 'Remove',
  thisIs: 'The mark that is picked is',
  role: {
    orifice: 'the orifice',
    leaves: 'where it bends',
    straightAgain: 'straight again',
  },
  pickBefore: 'Pick the mark before',
  pickNext: 'Pick the next mark',
  pickedOf: (number: number | undefined, of: number) =>
    number === undefined ? `${of} ${of === 1 ? 'mark' : 'marks'}` : `Mark ${number} of ${of}`,
  pickMark: (number: number) => `Pick mark ${number}`,
  besideImage: 'That is beside the image: no mark was set.',
  tooSmall: (off_mm: string) =>
    `At this size a finger is off by ${off_mm} mm. Zoom in, then drag the mark to where it belongs.`,
  nearerThere: 'Zoom in there',
  ask: {
    turns_back: (number: number) => `At mark ${number} the line runs back. Is a mark out of order, or astray?`,
    sharp: (number: number) => `At mark ${number} the line turns more sharply than a canal does. Is it astray?`,
    edge: (number: number) => `Mark ${number} lies on the edge of the image. Does the root end outside it?`,
  },
  soItIs: (canal: string) => `${canal}: I looked at the marks that are asked about; they are right`,
  hint: {
    reference: (point: string) =>
      `Touch the reference point${point ? `, ${point}` : ''}. Two fingers zoom, one moves the image.`,
    orifice: 'Touch the orifice, then marks along the canal to the end of the root.',
    along: 'Mark on to the end of the root. At the mark where the canal leaves its straight part, say so.',
    end: 'Rest a finger on a mark to pick it, drag it to move it. A touch sets a new one after it.',
    tip: 'Touch the tip of the instrument.',
    scale: {
      first: 'Touch both ends of something whose length you know; along it if it is bent.',
      more: 'Touch its other end, and marks along it if it is bent. Then say how long it is.',
    },
  },
  instrumentIn: 'An instrument stands in this canal',
  markTip: 'Mark its tip',
  setAt: 'Stop set at',
  setAtHint: 'From the stop to the tip, as it was set.',
  asScale: 'Take it as the scale',
  fileSays: 'The file:',
  knownWhat: 'What you know the length of',
  known: { instrument: 'instrument', ruler: 'ruler', ball: 'ball' },
  knownLength: {
    instrument: 'From its stop to its tip',
    ruler: 'Between the two marks',
    ball: 'Across the ball',
  },
  length: (said: string) => `${said} mm`,
  noScale: 'No length without a scale.',
  ratio: (times: number, canal: string) => `No length without a scale: ${times.toFixed(2)} times as long as ${canal}.`,
  row: {
    length: 'Length',
    angle: 'Bend (Schneider)',
    short: ['Tip short of the end', 'Tip past the end'] as const,
    deeper: ['Tip deeper than its stop', 'Tip short of its stop'] as const,
  },
  ends: (percent: number) =>
    `In ${percent}\u00a0% of images marked like this the true value lies between the numbers on the right.`,
  tooLong: (most_mm: number) => `No canal is longer than ${most_mm} mm: check the scale and the marks.`,
  astray: (said: string, deeper: boolean) =>
    `The tip lies ${said} mm ${deeper ? 'deeper than' : 'short of where'} its stop has it, more than marks are off: check the stop, the reference point and the scale.`,
  scaleNone: 'No scale: only angles and ratios. Mark something of known length under Scale.',
  scaleKnown: (what: string, said: string) => `Scale: ${what}, ${said} mm. Right at its depth in the beam.`,
  scaleOff: (percent: number, off: number) =>
    `By itself it puts lengths off by up to ${off.toFixed(1)}\u00a0% (in ${percent}\u00a0% of images).`,
  fault: {
    length: ({ object_least_mm: least, object_most_mm: most }: Bounds) =>
      `No scale: the known object is ${least} to ${most} mm long. Type its length again.`,
    close: () => 'No scale: its marks lie too close together to measure by. Zoom in and mark both ends again.',
    pixel: ({ pixel_least_mm: least, pixel_most_mm: most }: Bounds) =>
      `No scale: a pixel would not be ${least} to ${most} mm large. Check what was marked and its length.`,
  },
  radius: (said: string) => `radius ${said} mm`,
  angle: (deg: number) => `bend ${deg}° (Schneider)`,
  tipShort: (said: string, short: boolean) => `tip ${said} mm ${short ? 'short of' : 'past'} the end`,
  picture: 'Brightness and contrast',
  brightness: 'Brightness',
  contrast: 'Contrast',
  invert: 'Invert',
  asTaken: 'As taken',
  take: (canal: string, said: string) => `${canal}: ${said} mm becomes a reading`,
  takeTip: (canal: string, set: string, tip: string, short: boolean) =>
    `${canal}: stop ${set}, tip ${tip} mm ${short ? 'short' : 'past'}, becomes a reading`,
  noReferencePoint: (canals: string) =>
    `${canals}: choose the reference point on the case first; then a length can be taken.`,
  keep: 'Keep these marks',
  waits: 'Kept on this phone. They are sent after their image.',
  refused: 'The server would not keep these marks:',
  throwAway: 'Throw them away',
  made: 'Marked so far',
  by: (number: number, name: string, when: string) => `${number} · ${name}, ${when}`,
  corrects: (number: number) => `puts ${number} right`,
  between: (percent: number | undefined, value: string, least: string, most: string) =>
    `${value} mm (${within(percent)} ${least} to ${most})`,
  endsApart: (said: string) => `its end marked ${said} mm away`,
  longerBy: (more_mm: number) =>
    `${Math.abs(more_mm).toFixed(1)} mm ${more_mm >= 0 ? 'longer' : 'shorter'} than before`,
  taken: 'taken as a reading',
  whichSide: 'Which canal is which?',
  whichSideSays:
    'Two canals lie over each other. Take a second image with the tube moved, and see which way one of the two lines moved against the other.',
  tubeMoved: 'The tube moved to the',
  lineMoved: 'Against the other, this line moved to the',
  way: { mesial: 'mesial', distal: 'distal', hardly: 'hardly moved' },
  lies: { buccal: 'Buccal.', lingual: 'Lingual.', cannot_tell: 'Cannot be told.' },
  drawing: 'From above: tube, two canals one behind the other, film',
  liesOf: (canal: string, other: string) => ({
    buccal: `${canal} lies buccal of ${other}.`,
    lingual: `${canal} lies lingual of ${other}.`,
    cannot_tell: 'Cannot be told.',
  }),
  canal: 'Canal',
  against: 'against',
  mesialIs: 'On both images mesial is to the',
  hand: { left: 'left', right: 'right' },
  toTheSide: (said: string, right: boolean) => `${said} mm to the ${right ? 'right' : 'left'}`,
  liesRight: (canal: string, other: string, first: string, second: string) =>
    `By the marks, ${canal} lies ${first} of ${other} on the one image, and ${second} on the other.`,
  thisLine: 'this line',
  bendInSpace: 'Bend in space',
  bendOnBoth: 'Mark where a canal bends on both images: each shows a part of its bend.',
  bendsSeen: (canal: string, one_deg: number, other_deg: number) =>
    `${canal} bends ${one_deg}° on the one image and ${other_deg}° on the other.`,
  tubeTurned: 'Between them the tube turned by',
  tubeTurnedHint: 'About the long axis of the tooth, as it was set.',
  bendsTo: 'On the other image it bends to',
  bendSide: { same: 'the same side', other: 'the other side' },
  inSpace: (deg: number) => `${deg}° in space`,
  angleWithin: (percent: number | undefined, least: number, most: number) =>
    `(${within(percent)} ${least}° to ${most}°)`,
  keepBend: (canal: string) => `Keep and chart for ${canal}`,
  outdated: 'marked anew since',
  needsConnection: 'This needs a connection. What is marked stays.',
  film: 'film',
  cheek: 'cheek',
  tongue: 'tongue',
  sideBySide: 'Images side by side',
  twoNeeded: 'Two images on the server are needed.',
  together: 'Zoom together',
  showMarks: 'Show marks',
  side: { left: 'One image', right: 'The other' },
  inThePlan: 'What this does to the plan',
  beginFrom: (number: number) => `Go on from ${number}`,
}
