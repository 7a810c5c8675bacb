import type { PayloadOf } from './course-event'

/** Emergencies after which nothing but saline goes into any canal: what was given may have left the root. */
const SALINE_AFTER: readonly string[] = [
  'perforation_suspected',
  'hypochlorite_accident',
  'sudden_bleeding',
  'sudden_pain_or_swelling',
]

/** One emergency. It is never taken back: what it was said to be can be put right, or that it was not so. */
export interface Emergency {
  readonly id: string
  /** As last said; empty where it was not so. */
  readonly what: string
  /** The event that said so last, or empty. */
  readonly correctedBy: string
  /** The event by which a supervisor said that they go there, or empty. */
  readonly comingBy: string
}

/** All of a tooth. Only a supervisor ends a halt, and only of what the supervisor had seen. */
export class Emergencies {
  readonly byId = new Map<string, Emergency>()
  /** The emergency by each event that halts the tooth: by telling it, or by saying that it was something else. */
  readonly halting = new Map<string, string>()
  /** The emergency since which every canal is irrigated with saline alone. */
  salineBy: string | null = null
  /** What the teller had done before an emergency and was still on its way: the halt does not stop it. */
  private readonly before = new Map<string, readonly string[]>()

  get haltedBy(): string | null {
    return this.halting.values().next().value ?? null
  }

  /** Those that halt the tooth, in the order they were told. */
  get open(): readonly Emergency[] {
    const halting = [...this.halting.values()]
    return [...this.byId.values()].filter((emergency) => halting.includes(emergency.id))
  }

  /** Whether what this event tells was done in spite of an emergency. */
  halts(event: string): boolean {
    return [...this.halting.keys()].some((by) => !this.before.get(by)?.includes(event))
  }

  /** One more; it halts the tooth. */
  tell(id: string, { what, before = [] }: PayloadOf<'emergency'>): void {
    this.byId.set(id, { id, what, correctedBy: '', comingBy: '' })
    this.halting.set(id, id)
    this.before.set(id, before)
    this.keepToSaline(id, what)
  }

  /**
   * False where no such emergency was told. What it was instead halts like an emergency of its own; that it was not so
   * ends nothing: a supervisor does.
   */
  correct(by: string, { corrects, what }: PayloadOf<'corrected'>): boolean {
    const emergency = this.byId.get(corrects)
    if (!emergency) return false
    this.byId.set(emergency.id, { ...emergency, what: what ?? '', correctedBy: by })
    if (!what) return true
    this.halting.set(by, emergency.id)
    this.keepToSaline(emergency.id, what)
    return true
  }

  /** A supervisor goes to all that halts the tooth now. */
  come(by: string): void {
    for (const emergency of this.open) this.byId.set(emergency.id, { ...emergency, comingBy: by })
  }

  /** Ends what the supervisor had seen, and with it saline alone unless that is kept. False where nothing ends. */
  resume({ ends: named = [], keep_saline }: PayloadOf<'resume'>): boolean {
    const ended = [...this.halting.keys()].filter((event) => named.length === 0 || named.includes(event))
    for (const event of ended) this.halting.delete(event)
    const lifts = this.salineBy !== null && !keep_saline
    if (lifts) this.salineBy = this.open.find((emergency) => SALINE_AFTER.includes(emergency.what))?.id ?? null
    return ended.length > 0 || lifts
  }

  private keepToSaline(emergency: string, what: string): void {
    if (SALINE_AFTER.includes(what)) this.salineBy ??= emergency
  }
}
