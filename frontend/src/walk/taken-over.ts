/**
 * Who works a case beside its student: a supervisor who said so, until they give it back, another takes over, or the
 * visit is closed.
 */
export class TakenOver {
  /** Id of the supervisor who works the case now; empty while its student works alone. */
  by = ''
  private readonly was = new Set<string>()

  /** Whether they took over once and no longer work the case. */
  ended(actor: string): boolean {
    return this.was.has(actor)
  }

  take(actor: string): boolean {
    if (this.by === actor) return false
    this.end(this.by)
    this.by = actor
    this.was.delete(actor)
    return true
  }

  end(actor: string): boolean {
    if (actor === '' || this.by !== actor) return false
    this.was.add(actor)
    this.by = ''
    return true
  }
}
