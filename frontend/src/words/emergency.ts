/** Why an emergency is not with the server yet, as it truly is. */
export type Why = 'on the way' | 'no answer' | 'signed out' | 'other person' | 'server fails' | 'refused'

/** Words of an emergency: what is told of it, and to whom. */
export const emergency = {
  title: 'Emergency',
  /** Names that are read out alone. */
  halted: 'The tooth is halted',
  firstSteps: 'What to do first',
  onTheWay: 'It is being sent. Call out meanwhile.',
  notSent: (why: Exclude<Why, 'on the way'>, says: string, online: boolean) =>
    `NOT SENT: call out. ${because(why, says, online)}`,
  comes: (names: string) => `${names} is on the way.`,
  notSo: (name: string) => `It was not so, says ${name}`,
  corrected: (name: string) => `Corrected by ${name}`,
  correct: 'Correct it',
  wasSomethingElse: 'What was it instead?',
  wasNotSo: 'It was not so',
  correctSays: 'Everybody it was told to is told. Work stands still until a supervisor lets it go on.',
  another: 'Something else has happened',
  going: 'I am going',
  open: 'Open the chair',
  at: (tooth: string, alias: string) => `EMERGENCY: tooth ${tooth}, ${alias}`,
  who: (name: string, setting: string, ago: string) => `${name}, ${setting.toLowerCase()}, ${ago}`,
  ago: (seconds: number) => {
    const minutes = Math.floor(seconds / 60)
    return minutes < 1 ? 'just now' : minutes < 60 ? `${minutes} min ago` : `${Math.floor(minutes / 60)} h ago`
  },
}

function because(why: Exclude<Why, 'on the way'>, says: string, online: boolean): string {
  switch (why) {
    case 'no answer':
      return online ? 'The server does not answer; it is tried again by itself.' : 'This phone has no connection.'
    case 'signed out':
      return 'Your sign-in has run out. Sign in: it goes out at once.'
    case 'other person':
      return 'Somebody else is signed in on this phone.'
    case 'server fails':
      return `The server could not take it, and is asked again by itself: ${says}`
    case 'refused':
      return `The server will not take it: ${says}`
  }
}
