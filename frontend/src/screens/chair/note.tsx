import { TextField } from '@/parts/fields'
import { useDraft } from '@/store/cache/hooks'
import type { Chair } from '@/store/chair/chair'
import { words } from '@/words/en'

/** Something worth keeping that no button says. What is typed stays until it is kept. */
export function Note({ chair }: { chair: Chair }) {
  const draft = useDraft(`note on ${chair.version.case_id}`, () => ({ text: '' }))
  const { text } = draft.fields.value
  const keep = async () => {
    // Of the tooth, so that it never stands in the way of taking back a canal's last step.
    await chair.record('', '', { kind: 'note', text: text.trim() })
    await draft.clear({ text: '' })
  }
  return (
    <details class="note">
      <summary>{words.chair.addNote}</summary>
      <div class="stack">
        <TextField
          label={words.chair.noteText}
          hint={words.chair.noteHint}
          value={text}
          onInput={(typed) => draft.set({ text: typed })}
          rows={3}
          maxLength={1000}
        />
        <button type="button" class="button answer" disabled={text.trim() === ''} onClick={() => void keep()}>
          {words.chair.keepNote}
        </button>
      </div>
    </details>
  )
}
