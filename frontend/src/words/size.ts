export const size = {
  size: {
    inside: 'inside',
    outside: 'outside',
    reached: 'wall reached',
    left: 'wall left',
    strain: 'strain',
    compare: 'Sizes compared',
    caption: (canal: string) => `What each final size means for ${canal}`,
    size: 'Size',
    take: (canal: string) => `${canal}: take size`,
    notKnown: 'not known',
    percent: (value: number) => `${value} %`,
    sayWhy: (canal: string, size: number, least: number, most: number) =>
      `${canal}: why ${size}, outside the advised ${least}–${most}`,
    saysWhy: (size: number, least: number, most: number) => `size ${size} is outside the advised ${least}–${most}:`,
    noReason: 'no reason given',
  },
} as const
