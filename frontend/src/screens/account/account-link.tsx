import { session } from '@/store/session'
import { words } from '@/words/en'
import './account.css'

/** The way to sign-out and to light or dark; the letter is the reader's own. */
export function AccountLink() {
  return (
    <a class="account-link" href="/account" aria-label={words.account.title}>
      {(session.value?.person.name || '?').charAt(0)}
    </a>
  )
}
