import type { EventPayload } from '@/api/shapes'
import { listed } from './common'

const EXITS: Record<string, string> = {
  done: 'done',
  reached: 'at its stop',
  short: 'stopped short',
  blocked: 'does not pass',
}

/** What a canal is paused for under Problem. */
const PAUSES: Record<string, string> = {
  sensitivity: 'It hurts',
  normal_bleeding: 'It bleeds a little',
  ledge_suspected: 'It catches: a ledge?',
  other: 'Something else',
}

const clock = (seconds: number) => `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, '0')}`

/** Words of the step that is due: where one is, what it rests on, and the ways out of it. */
export const card = {
  place: (step: number, about: number) => `step ${step} of about ${about}`,
  restsOn: (length: string, methods: readonly string[], agree: string) =>
    [`Length ${length}${methods.length ? `: rests on ${methods.join(' and ')}` : ''}`, agree]
      .filter(Boolean)
      .join(', '),
  agree: 'they agree',
  apart: (mm: string) => `${mm} mm apart`,
  provisional: 'an estimate',
  /** Names that are read out alone. */
  now: (canal: string) => `Now in ${canal}`,
  what: 'What to do now',
  stop: 'stop',
  needle: 'needle now, at most',
  exit: (exit: string) => EXITS[exit] ?? exit,
  stopped: (depth: string) => `stopped at ${depth}`,
  motorMissing:
    'Not used before its speed and torque are known. Look them up in the maker’s instructions, have them entered in the kit, and plan again.',
  turned: (canal: string) => `turned to ${canal}`,
  undo: (what: string) => `Take back: ${what}`,
  notSure: 'Not sure',
  why: 'Why this step',
  unsure: 'is not sure',
  askTitle: 'Not sure?',
  ask: 'Ask a supervisor',
  asked: 'A supervisor is asked. It stands on their list; look for them in the room too.',
  askedNotSent: 'Not sent yet: this phone has no connection. Ask in the room.',
  pauseHere: 'Pause this canal',
  pauses: PAUSES,
  paused: (why: string) => ['paused', PAUSES[why]?.toLowerCase()].filter(Boolean).join(': '),
  looked: (state: Extract<EventPayload, { kind: 'inspected' }>['found'], why: string | undefined) =>
    state === 'whole' ? why || 'as it was' : ['discarded', why].filter(Boolean).join(': ').toLowerCase(),
  pausedFor: {
    sensitivity: 'Paused: it hurts.',
    normal_bleeding: 'Paused: it bleeds a little.',
    ledge_suspected: 'Paused: a ledge is suspected.',
    not_sure: 'Paused: not sure.',
    other: 'Paused.',
  } as Record<string, string>,
  from: 'Where this is from',
  noFirst: 'This plan was made before first steps came with it. The person in the room says what to do.',
  keepSaline: 'Keep to saline after this',
  saline: 'Saline only, in every canal, until a supervisor lifts it.',
  liftSaline: 'Lift saline only',
  irrigateMore: 'Irrigate',
  moreTitle: (canal: string) => `Irrigate ${canal} now`,
  which: 'With what',
  howMuch: 'How much',
  ml: (ml: number) => `${ml} ml`,
  soFar: (said: readonly string[]) => (said.length ? `In this canal so far: ${said.join(', ')}.` : 'Nothing so far.'),
  amount: (ml: number, irrigant: string) => `${ml} ml ${irrigant}`,
  startTime: 'It is in: start the time',
  countTime: 'Count the time',
  doneUntimed: 'Done, not timed',
  doneTimed: (seconds: number) => `Done after ${clock(seconds)}`,
  time: (seconds: number, about: number | undefined) =>
    about === undefined ? clock(seconds) : `${clock(seconds)} of about ${clock(about)}`,
  timeUnknown:
    'How long it has been in is not known: the phone’s clock was set, or the phone slept. Go by another clock, or rinse and start anew.',
  timeUnknownShort: 'time not known',
  doneUnknown: 'Done, time not known',
  timeEnough: 'Long enough. Flush it out before the next irrigant.',
  timeOver: (most: number) => `Over ${clock(most)}: it harms dentine. Flush it out now.`,
  goOnIn: (canal: string) => `Go on in ${canal}`,
  next: (instrument: string, canal: string) => `Next at the tray: ${instrument} in ${canal}`,
  noImageYet: 'Take the image, or say why there is none here:',
  noImage: { no_sensor: 'No sensor', film: 'On film', image_elsewhere: 'Image elsewhere' },
  look: (instruments: readonly string[]) => `Look at ${listed(instruments)} first`,
  lookAfter: (instrument: string) => `Out: look at ${instrument}.`,
  allWhole: (n: number) => (n === 1 ? 'As it was' : 'All as they were'),
  discard: 'Discard',
  discardTitle: 'Discard which?',
  whyDiscard: (instrument: string) => `${instrument}: why?`,
  pieceMissing: 'A piece is missing',
  takeNew: (instrument: string) => `Take a new ${instrument}`,
  wasDiscarded: (why: string) => `The one in use was discarded${why ? `: ${why.toLowerCase()}` : ''}.`,
  newTaken: 'New one in hand',
  newOne: 'new one',
  notTouched: 'Stopped at —',
}

export const hand = { label: 'Hand that answers at the chair', right: 'right', left: 'left' }
