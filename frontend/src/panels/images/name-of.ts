import type { ImageShown } from '@/api/shapes'
import { words } from '@/words/en'

/** What an image is called on screen. */
export const nameOf = ({ purpose, canal, device_time }: Pick<ImageShown, 'purpose' | 'canal' | 'device_time'>) =>
  words.images.alt(words.images.purpose[purpose], canal, words.when(device_time))
