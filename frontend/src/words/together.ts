import { listed } from './common'

/** Words of what is done for several canals at once. */
export const together = {
  askFor: (canals: readonly string[]) => `Ask for ${listed(canals)}`,
  approve: (canals: readonly string[]) => `Approve ${listed(canals)}`,
  holdsFor: 'Holds for',
  asksFor: 'One word for',
  shows: 'One exposure shows',
  turned: 'From another angle: what lies behind another canal is seen apart.',
  wordToCome: (canals: readonly string[]) =>
    `${listed(canals)} ${canals.length > 1 ? 'come' : 'comes'} to this point too: bring ${canals.length > 1 ? 'them' : 'it'} here first, and one word serves all.`,
  imageToCome: (canals: readonly string[]) =>
    `${listed(canals)} ${canals.length > 1 ? 'come' : 'comes'} to this image too: bring ${canals.length > 1 ? 'them' : 'it'} here first, and one exposure shows all.`,
  asks: (words: number, exposures: number) =>
    `${words} ${words === 1 ? 'word' : 'words'} of a supervisor, ${exposures} ${exposures === 1 ? 'exposure' : 'exposures'}`,
  wordsAt: (words: number) => (words === 0 ? 'no word' : words === 1 ? 'one word' : `${words} words`),
  onThePlan: 'The plan itself: one word',
  stage: (what: string, canals: readonly string[]) => `${what}: ${listed(canals)}`,
  exposure: (canals: readonly string[], isTurned: boolean) =>
    `${isTurned ? 'from another angle' : 'one exposure'}: ${listed(canals)}`,
  counted: (done: number, planned: number | null) => (planned === null ? `${done}` : `${done} (planned: ${planned})`),
  title: 'Words and exposures',
  words: 'Words of a supervisor',
  exposures: 'Exposures',
  review: (by: string) => `Patient to be seen again by ${by}`,
  seenAgain: (at: string) => `seen again ${at}`,
  notSeenAgain: 'no visit recorded since',
}
