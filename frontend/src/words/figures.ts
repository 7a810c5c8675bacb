const KINDS = { cone: 'Cone', plugger: 'Plugger', spreader: 'Spreader' } as const

type Kind = keyof typeof KINDS

export const figures = {
  irrigant: 'Irrigant over the order of work',
  wall: (from_end: string) => `Thinnest wall, ${from_end} mm from the end`,
  before: 'before',
  centred: 'left if the preparation stays centred',
  worst: 'left if it drifts to this side',
  measured: 'Measured on this tooth.',
  strain: 'Strain in the curve',
  strainOf: (instrument: string) => `strain of ${instrument}`,
  curveTaken: (radius: string) =>
    `Not all of this curve is charted: a radius of ${radius} mm is counted with. Measure the bend on an image.`,
  strainSays: 'A class for ranking, never a prediction of how long an instrument lasts.',
  classes: { low: 'low', medium: 'medium', high: 'high' },
  filling: 'Cone and filling',
  masterCone: (name: string) => `Master cone: ${name}`,
  noCone: 'No cone of the kit rests at the end within tolerance.',
  others: 'The others of the kit',
  kind: (kind: Kind) => KINDS[kind],
  restOf: (kind: Kind, name: string) => `${KINDS[kind].toLowerCase()} ${name}`,
  restsAt: (depth: string) => `rests at ${depth}`,
  passesEnd: 'would pass the end',
  initialShape: 'Canal before preparation',
  prepared: 'Prepared canal',
  cone: 'The cone’s part of it',
  toFill: 'Left to fill',
  volume: (volume_mm3: number) => `${volume_mm3} mm³`,
}
