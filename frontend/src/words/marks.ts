export const marks = {
  marks: {
    board: 'Image',
    keys: 'Arrow keys move the mark that is picked, or the image; plus and minus zoom.',
    nearer: 'Nearer',
    farther: 'Farther',
    whole: 'Whole image',
  },
} as const
