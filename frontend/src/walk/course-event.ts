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
  | 'revoked'
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

/** One event, as the course needs it. `canal` is empty where it concerns the whole tooth. */
export interface CourseEvent {
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
