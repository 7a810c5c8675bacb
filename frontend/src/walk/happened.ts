export type Kind =
  | 'step'
  | 'answer'
  | 'reading'
  | 'sign_off'
  | 'inspected'
  | 'turn'
  | 'pause'
  | 'emergency'
  | 'corrected'
  | 'resume'
  | 'close'
  | 'reopen'
  | 'replan'
  | 'release'
  | 'ask'
  | 'come'
  | 'wanted'
  | 'struck'
  | 'take_over'
  | 'give_back'
  | 'on_site'
  | 'dam'
  | 'image'
  | 'irrigated'
  | 'note'
  | 'undo'

/** Recorded by the server itself when something is decided on a plan: no work. */
const FROM_HERE: readonly Kind[] = ['replan', 'release']

/** Whether anything was done: a decision on a plan comes before any work. */
export const workHasBegun = (events: readonly Happened[]): boolean =>
  events.some((event) => !FROM_HERE.includes(event.kind))

/** One event, as the course needs it. `canal` is empty where it concerns the whole tooth. */
export interface Happened {
  readonly id: string
  readonly kind: Kind
  readonly actor: string
  readonly plan: string
  readonly canal: string
  readonly node: string
  readonly body: Readonly<Record<string, unknown>>
  /** What of it the server could not check; empty or left out where nothing. */
  readonly notChecked?: string
}
