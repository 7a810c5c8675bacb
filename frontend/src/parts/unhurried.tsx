import { type ComponentChildren, createContext } from 'preact'
import { useContext, useLayoutEffect, useRef, useState } from 'preact/hooks'
import { Unhurry } from './unhurry'
import './unhurried.css'

const Over = createContext<Unhurry | undefined>(undefined)

/** For a screen where a touch records something: what is `asked` there, in any words that change with it. */
export function useUnhurry(asked: string): Unhurry {
  const [over] = useState(() => new Unhurry())
  useLayoutEffect(over.changed, [over, asked])
  return over
}

/** The screen's part that is watched over. */
export function Unhurried({ over, children, ...rest }: { over: Unhurry; class: string; children: ComponentChildren }) {
  const root = useRef<HTMLDivElement>(null)
  useLayoutEffect(() => (root.current ? over.watch(root.current) : undefined), [over])
  return (
    <Over.Provider value={over}>
      <div ref={root} {...rest}>
        {children}
      </div>
    </Over.Provider>
  )
}

/** Says what is asked in a part of the screen; its coming and going counts too. */
export function useAsked(what: string | undefined): void {
  const over = useContext(Over)
  useLayoutEffect(() => {
    over?.changed()
    return over?.changed
  }, [over, what])
}
