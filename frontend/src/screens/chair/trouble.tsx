import { useRef } from 'preact/hooks'
import type { Told } from '@/api/shapes'
import type { Chair } from '@/store/chair'
import { lastToUndo } from '@/store/undo'
import { words } from '@/words/en'

type What = Extract<Told, { kind: 'emergency' }>['what']

/** The ways out of a step that are always there: take back, not sure, problem. */
export function Trouble({ chair, canal }: { chair: Chair; canal: string }) {
  const dialog = useRef<HTMLDialogElement>(null)
  const last = lastToUndo(chair, canal)
  const pause = (reason: string) => void chair.record(canal, '', { kind: 'pause', reason })
  const stop = (what: string) => {
    dialog.current?.close()
    void chair.record('', '', { kind: 'emergency', what: what as What, note: '' })
  }
  return (
    <>
      <div class="ways-out">
        <button
          type="button"
          class="button"
          disabled={!last}
          onClick={() => last && void chair.record(canal, '', { kind: 'undo', undoes: last.id })}
        >
          {words.chair.undo}
        </button>
        <button type="button" class="button" onClick={() => pause(words.chair.notSure)}>
          {words.chair.notSure}
        </button>
        <button type="button" class="button" onClick={() => dialog.current?.showModal()}>
          {words.chair.problem}
        </button>
      </div>
      <dialog ref={dialog} class="trouble" aria-label={words.chair.what}>
        <h2>{words.chair.what}</h2>
        <button
          type="button"
          class="button answer"
          onClick={() => {
            dialog.current?.close()
            pause(words.chair.problem)
          }}
        >
          {words.chair.pause}
        </button>
        <h3>{words.chair.emergency}</h3>
        {Object.entries(words.chair.emergencies).map(([what, says]) => (
          <button key={what} type="button" class="button answer" data-sign="stop" onClick={() => stop(what)}>
            {says}
          </button>
        ))}
        <button type="button" class="button plain" onClick={() => dialog.current?.close()}>
          {words.chair.cancel}
        </button>
      </dialog>
    </>
  )
}
