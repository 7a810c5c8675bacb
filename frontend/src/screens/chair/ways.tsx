interface WaysProps {
  says: Record<string, string>
  sign: 'stop' | 'caution'
  onChoose: (what: string) => void
}

/** What may have happened, each a button of its own. */
export function Ways({ says, sign, onChoose }: WaysProps) {
  return (
    <div class="ways">
      {Object.entries(says).map(([what, said]) => (
        <button key={what} type="button" class="button answer" data-sign={sign} onClick={() => onChoose(what)}>
          {said}
        </button>
      ))}
    </div>
  )
}
