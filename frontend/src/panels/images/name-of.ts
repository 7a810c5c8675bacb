import type { ImageShown } from '@/api/shapes'
import { words } from '@/words/en'

/** What an image is called on screen. */
export const nameOf = ({ shows, canal, device_time }: Pick<ImageShown, 'shows' | 'canal' | 'device_time'>) =>
  words.images.alt(words.images.shows[shows], canal, words.when(device_time))
