// On the screen for 400 ms, longer than the two touches of a double tap are apart; before that a frame to draw it.
export const SHOWN_MS = 400 + 20
const PRESSING = ['Enter', ' ']
// A label is a button too where it stands for choosing a file.
const BUTTONS = 'button, label.button'
const heldUp = (button: Element | null) => button !== null && !button.closest('[data-at-once]')

/**
 * Takes a touch only where what it answers had been on the screen for 400 ms when the finger or the key went down, and
 * nothing is being written. Whatever changes what is asked says so; buttons look not yet ready until then. What is
 * marked `data-at-once`, an emergency, is never held up.
 */
export class Unhurry {
  private since = performance.now()
  private writing = 0
  /** When the touch began that the next click ends; a key that is held repeats its clicks. */
  private pressed: number | undefined
  private held = 0
  private root: HTMLElement | undefined
  private readonly coming = new MutationObserver(() => this.look(true))
  private timer: ReturnType<typeof setTimeout> | undefined

  /** What is asked is another now. */
  readonly changed = () => {
    this.since = performance.now()
    clearTimeout(this.timer)
    this.timer = setTimeout(() => this.writing === 0 && this.look(false), SHOWN_MS)
    this.look(true)
  }

  /** Nothing else is taken while this is written: the screen still shows what it answers. */
  async during<T>(written: Promise<T>): Promise<T> {
    this.writing++
    this.changed()
    try {
      return await written
    } finally {
      this.writing--
      this.changed()
    }
  }

  /** All buttons below the element, sheets too; returns how to leave off. */
  watch(root: HTMLElement): () => void {
    this.root = root
    this.changed()
    const away = new AbortController()
    const on = { capture: true, signal: away.signal }
    root.addEventListener('pointerdown', (event) => this.press(event), on)
    root.addEventListener('pointercancel', () => this.release(), on)
    root.addEventListener('keydown', (event) => PRESSING.includes(event.key) && this.press(event, event.repeat), on)
    root.addEventListener('click', (event) => this.click(event), on)
    return () => {
      clearTimeout(this.timer)
      this.coming.disconnect()
      away.abort()
    }
  }

  /** By when it was done, not by when a busy phone comes to it. */
  private press({ timeStamp }: Event, repeat = false) {
    if (!repeat) this.held = timeStamp
    this.pressed = this.held
  }

  private release() {
    this.pressed = undefined
  }

  private click(event: MouseEvent) {
    const began = this.pressed ?? event.timeStamp
    this.release()
    if (this.writing === 0 && began - this.since >= SHOWN_MS) return
    if (!heldUp((event.target as Element).closest(BUTTONS))) return
    event.preventDefault()
    event.stopPropagation()
  }

  private look(waits: boolean) {
    // What comes onto the screen meanwhile waits too.
    if (waits && this.root) this.coming.observe(this.root, { childList: true, subtree: true })
    else this.coming.disconnect()
    for (const button of this.root?.querySelectorAll(BUTTONS) ?? []) {
      if (!heldUp(button)) continue
      if (waits) button.setAttribute('aria-disabled', 'true')
      else button.removeAttribute('aria-disabled')
    }
  }
}
