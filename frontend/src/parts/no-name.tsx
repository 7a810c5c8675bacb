import { words } from '@/words/en'

const LOOKS_LIKE_A_NAME = 'alias-looks-like-a-name'

interface NoNameProps {
  of: { readonly state: string; readonly problem?: { readonly code: string } }
  onSaid: () => void
}

/** The alias as it is sent; `noName` is the one that somebody looked at, so that it is asked about once. */
export function saidOf(typed: string, noName: string | undefined) {
  return { patient_alias: typed.trim(), ...(typed === noName ? { alias_is_no_name: true } : {}) }
}

/** Asked once, where an alias has the form of a name: whoever looked says that it is none, and it is taken. */
export function NoName({ of, onSaid }: NoNameProps) {
  if (of.problem?.code !== LOOKS_LIKE_A_NAME) return null
  return (
    <button type="button" class="button answer" disabled={of.state === 'busy'} onClick={onSaid}>
      {words.newCase.noName}
    </button>
  )
}
