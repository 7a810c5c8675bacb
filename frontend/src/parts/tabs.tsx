import './tabs.css'

interface Tab {
  key: string
  label: string
  mark?: preact.ComponentChildren
}

interface TabsProps {
  name: string
  tabs: readonly Tab[]
  current: string
  onChoose: (key: string) => void
}

/** Views of one thing; the arrow keys move between them. */
export function Tabs({ name, tabs, current, onChoose }: TabsProps) {
  const move = (event: KeyboardEvent, from: number) => {
    const by = event.key === 'ArrowRight' ? 1 : event.key === 'ArrowLeft' ? -1 : 0
    const next = tabs[(from + by + tabs.length) % tabs.length]
    if (!by || !next) return
    event.preventDefault()
    onChoose(next.key)
    document.getElementById(`tab-${next.key}`)?.focus()
  }
  return (
    <div class="tabs not-on-paper" role="tablist" aria-label={name}>
      {tabs.map((tab, i) => (
        <button
          key={tab.key}
          id={`tab-${tab.key}`}
          type="button"
          role="tab"
          aria-selected={tab.key === current}
          aria-controls={`view-${tab.key}`}
          tabIndex={tab.key === current ? 0 : -1}
          onClick={() => onChoose(tab.key)}
          onKeyDown={(event) => move(event, i)}
        >
          {tab.label}
          {tab.mark}
        </button>
      ))}
    </div>
  )
}

export function TabView({ tab, children }: { tab: string; children: preact.ComponentChildren }) {
  return (
    <section class="tab-view" role="tabpanel" id={`view-${tab}`} aria-labelledby={`tab-${tab}`}>
      {children}
    </section>
  )
}
