const STEPS: Record<string, string> = {
  irrigate: 'irrigation',
  image: 'an image',
  sign_off: 'a hold point',
  fit_cone: 'the cone',
  dry: 'drying',
  fill: 'the filling',
}

/** Words to whoever looks in on a chair and does not work it, and of taking the work over. */
export const look = {
  look: {
    in: (who: string) => `You look in. ${who} works this tooth.`,
    inOnly: (who: string) => `You look in. ${who} works this tooth; a supervisor decides.`,
    at: (who: string, what: string, canal: string) => `${who} is at ${what} in ${canal}`,
    notBegun: (who: string) => `${who} has not begun.`,
    finished: (who: string, canal: string) => `${who} has finished ${canal}`,
    step: (action: string) => STEPS[action] ?? action,
    to: (stop: string) => `to its stop, ${stop} mm`,
    canal: {
      not_released: 'A supervisor’s decision leaves this canal out for now.',
      paused: (why: string) => `${why} It stands still until a supervisor lets it go on.`,
      past_stop: (who: string) => `An instrument went past its stop. ${who} has not said why yet.`,
      to_plan: 'Its stops are to be worked out anew before it goes on.',
      to_check: (who: string) => `${who} did not find it as it was left. A supervisor decides.`,
      finished: 'Finished.',
      waits: (what: string) => `Waits for a supervisor’s word: ${what}`,
    },
    missing: (who: string, what: string) => `${who} may not work yet: ${what}.`,
    emergency: (who: string) => `EMERGENCY, told by ${who}. Go there, or send somebody.`,
    answer: 'Answer this hold point',
    askImage: (canal: string) => `Ask for an image of ${canal}`,
    imageAsked: (canal: string) => `An image of ${canal} is asked for`,
    stop: 'Stop the work',
    takeOver: 'Take over',
    takeOverTitle: 'Take over this tooth?',
    takeOverWhy: (who: string) =>
      `What you record from then on is yours, and you are named until you give it back or the visit is closed. ${who} is told.`,
    iTakeOver: 'I take over',
    youWork: 'You have taken over: what you record here is yours.',
    giveBack: 'Give back',
    otherWorks: (who: string) => `${who} has taken over. What you record is kept as yours.`,
    wanted: (who: string, canal: string) => `${who} asks for an image of ${canal}.`,
    notYours: 'Only who works this tooth does this: its student, or a supervisor who took over.',
    lengths: 'Lengths are taken by who works this tooth: its student, or a supervisor who took over at the chair.',
    somebody: 'The student',
    supervisor: 'A supervisor',
  },
} as const
