interface WaysProps {
  says: Record<string, string>
  canHappen?: ((what: string) => boolean) | undefined
  sign: 'stop' | 'caution'
  onChoose: (what: string) => void
}

/** What may have happened, each a button of its own. */
export function Ways({ says, canHappen = () => true, sign, onChoose }: WaysProps) {
  const may = Object.entries(says).filter(([what]) => canHappen(what))
  return (
    <div class="ways">
      {may.map(([what, said]) => (
        <button key={what} type="button" class="button answer" data-sign={sign} onClick={() => onChoose(what)}>
          {said}
        </button>
      ))}
    </div>
  )
}
