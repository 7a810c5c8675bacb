import { session } from '@/store/session/session'
import { words } from '@/words/en'
import './account-link.css'

/** The way to sign-out and to light or dark; the letter is the reader's own. */
export function AccountLink() {
  return (
    <a class="account-link" href="/account" aria-label={words.account.title}>
      {initialOf(session.value?.person.name ?? '')}
    </a>
  )
}

/** Of the name, not of a title before it. */
const initialOf = (name: string) => name.replace(/^(Dr|Prof)\.? /, '').charAt(0) || '?'
