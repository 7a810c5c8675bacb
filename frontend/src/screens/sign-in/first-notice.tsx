import { useEffect } from 'preact/hooks'
import { words } from '@/words/en'
import './sign-in.css'

/** What everyone reads once before the first case: what this tool is, and who decides. */
export function FirstNotice({ onUnderstood }: { onUnderstood: () => void }) {
  useEffect(() => {
    document.title = `${words.notice.title} · ${words.product}`
  }, [])
  return (
    <main class="sign-in" id="main">
      <h1>{words.notice.title}</h1>
      <ul class="stack points">
        {words.notice.points.map((point) => (
          <li key={point}>{point}</li>
        ))}
      </ul>
      <button type="button" class="button main" onClick={onUnderstood}>
        {words.notice.go}
      </button>
    </main>
  )
}
