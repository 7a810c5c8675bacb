const LIES = { in: 'in range', above: 'above the range', below: 'below the range' }

interface Says {
  depth: string
  short: { mm: string; isPast: boolean; isAt: boolean } | undefined
  lies: keyof typeof LIES | undefined
}

interface Picture {
  canal: string
  stop: string | undefined
  end: string | undefined
  instrument: string | undefined
  tip: string | undefined
}

/** Words of a canal drawn large, and of the depth that is set beside it. */
export const depth = {
  notSet: 'not set',
  refused: (least: string, most: string) => `No depth here: ${least} to ${most} mm can be set. Type it again.`,
  drag: 'Drag the tip to where it stopped.',
  slider: (instrument: string) => (instrument ? `Where ${instrument} stopped` : 'Depth'),
  says: ({ depth, short, lies }: Says) =>
    [
      depth,
      short && (short.isAt ? 'at the stop' : `${short.mm} ${short.isPast ? 'past' : 'short of'} the stop`),
      lies && LIES[lies],
    ]
      .filter(Boolean)
      .join(', '),
  picture: ({ canal, stop, end, instrument, tip }: Picture) =>
    [
      `${canal} as it is now`,
      end && `it ends at ${end}`,
      instrument && (tip ? `${instrument} stands at ${tip}` : `${instrument} is in hand`),
      stop && `stop ${stop}`,
    ]
      .filter(Boolean)
      .join(', '),
}
