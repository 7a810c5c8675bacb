import type { PayloadOf } from './course-event'

/** Emergencies after which nothing but saline goes into any canal: the irrigant may have left the root. */
const SALINE_AFTER: readonly string[] = [
  'perforation_suspected',
  'hypochlorite_accident',
  'sudden_bleeding',
  'sudden_pain_or_swelling',
]

/** One emergency. It is never taken back, only corrected: it was something else, or it was not so. */
export interface Emergency {
  readonly id: string
  /** As last said; empty where it was not so. */
  readonly what: string
  /** Id of the last event that corrected it; empty where none did. */
  readonly correctedBy: string
  /** The event by which a supervisor said that they go there; empty where none did. */
  readonly comingBy: string
}

/** All emergencies of a tooth. Only a supervisor ends a halt, and only for those that the supervisor had seen. */
export class Emergencies {
  readonly byId = new Map<string, Emergency>()
  /** The events that halt the tooth, each with its emergency: the one that told it, and each that made it another. */
  readonly halting = new Map<string, string>()
  /** The emergency since which every canal is irrigated with saline alone. */
  salineBy: string | null = null
  /** By emergency, the teller's earlier events that had not been sent yet: the halt does not stop them. */
  private readonly before = new Map<string, readonly string[]>()

  get haltedBy(): string | null {
    return this.halting.values().next().value ?? null
  }

  /** Those that halt the tooth, in the order they were told. */
  get open(): readonly Emergency[] {
    const halting = [...this.halting.values()]
    return [...this.byId.values()].filter((emergency) => halting.includes(emergency.id))
  }

  /** Whether a halt stops what this event tells. It does not stop what was done before the emergency. */
  halts(event: string): boolean {
    return [...this.halting.keys()].some((by) => !this.before.get(by)?.includes(event))
  }

  /** Adds an emergency, which halts the tooth. */
  tell(id: string, { what, before = [] }: PayloadOf<'emergency'>): void {
    this.byId.set(id, { id, what, correctedBy: '', comingBy: '' })
    this.halting.set(id, id)
    this.before.set(id, before)
    this.keepToSaline(id, what)
  }

  /**
   * Corrects an emergency; false where none has that id. What it was instead halts the tooth like a new one. That it was
   * not so ends no halt: only a supervisor does.
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

  /** Ends the halts that the supervisor had seen, and saline alone unless they keep it. False where nothing ended. */
  resume({ ends: named = [], keep_saline }: PayloadOf<'resume'>): boolean {
    const ended = [...this.halting.keys()].filter((event) => named.length === 0 || named.includes(event))
    for (const event of ended) this.halting.delete(event)
    const lifts = this.salineBy !== null && !keep_saline
    // Another one that still halts the tooth may ask for saline too.
    if (lifts) this.salineBy = this.open.find((emergency) => SALINE_AFTER.includes(emergency.what))?.id ?? null
    return ended.length > 0 || lifts
  }

  private keepToSaline(emergency: string, what: string): void {
    if (SALINE_AFTER.includes(what)) this.salineBy ??= emergency
  }
}
