import { listed } from './common'

/** Words of what is done for several canals at once. */
export const together = {
  askFor: (canals: readonly string[]) => `Ask for ${listed(canals)}`,
  approve: (canals: readonly string[]) => `Approve ${listed(canals)}`,
  holdsFor: 'Holds for',
  asksFor: 'One sign-off for',
  shows: 'One exposure shows',
  turned: 'From another angle: what lies behind another canal is seen apart.',
  signOffToCome: (canals: readonly string[]) =>
    `${listed(canals)} ${canals.length > 1 ? 'come' : 'comes'} to this point too: bring ${canals.length > 1 ? 'them' : 'it'} here first, and one sign-off serves all.`,
  imageToCome: (canals: readonly string[]) =>
    `${listed(canals)} ${canals.length > 1 ? 'come' : 'comes'} to this image too: bring ${canals.length > 1 ? 'them' : 'it'} here first, and one exposure shows all.`,
  asks: (signOffs: number, exposures: number) =>
    `${signOffs} ${signOffs === 1 ? 'sign-off' : 'sign-offs'} by a supervisor, ${exposures} ${exposures === 1 ? 'exposure' : 'exposures'}`,
  signOffsAt: (count: number) => (count === 0 ? 'no sign-off' : count === 1 ? 'one sign-off' : `${count} sign-offs`),
  onThePlan: 'The plan itself: one sign-off',
  stage: (what: string, canals: readonly string[]) => `${what}: ${listed(canals)}`,
  exposure: (canals: readonly string[], isTurned: boolean) =>
    `${isTurned ? 'from another angle' : 'one exposure'}: ${listed(canals)}`,
  counted: (done: number, planned: number | null) => (planned === null ? `${done}` : `${done} (planned: ${planned})`),
  title: 'Sign-offs and exposures',
  signOffs: 'Sign-offs by a supervisor',
  exposures: 'Exposures',
  review: (by: string) => `Patient to be seen again by ${by}`,
  seenAgain: (at: string) => `seen again ${at}`,
  notSeenAgain: 'no visit recorded since',
}
