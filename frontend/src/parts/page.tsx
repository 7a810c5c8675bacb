import { useEffect } from 'preact/hooks'
import { words } from '@/words/en'
import './page.css'

interface PageProps {
  title: string
  under?: preact.ComponentChildren
  back?: { to: string; says: string } | undefined
  aside?: preact.ComponentChildren
  wide?: boolean
  foot?: preact.ComponentChildren
  children: preact.ComponentChildren
}

/** A screen: its name in the tab and at the top, the way back, what it holds, and what is always in reach at its foot. */
export function Page({ title, under, back, aside, wide = false, foot, children }: PageProps) {
  useEffect(() => {
    document.title = `${title} · ${words.product}`
  }, [title])
  return (
    <div class={wide ? 'page wide' : 'page'}>
      <header class="page-head not-on-paper">
        {back && (
          <a class="back" href={back.to}>
            <span class="unseen">{back.says}</span>
            <svg viewBox="0 0 24 24" aria-hidden="true">
              <path d="M15 4 7 12l8 8" fill="none" stroke="currentColor" stroke-width="2.5" />
            </svg>
          </a>
        )}
        <div class="grow">
          <h1>{title}</h1>
          {under && <p class="small soft under">{under}</p>}
        </div>
        {aside}
      </header>
      <main class="body" id="main" tabIndex={-1}>
        {children}
      </main>
      {foot && <footer class="page-foot not-on-paper">{foot}</footer>}
    </div>
  )
}
