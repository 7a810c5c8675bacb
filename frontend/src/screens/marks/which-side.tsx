import { useState } from 'preact/hooks'
import type { MarkingShown } from '@/api/shapes'
import { onBoth, rightOfMm, type Way } from '@/panels/marks/two-markings'
import { Choice, Select } from '@/parts/fields'
import { Notice } from '@/parts/notice'
import { tenth } from '@/units/millimetres'
import { words } from '@/words/en'
import { TwoViewsDrawing } from './two-views-drawing'
import { useTwoViews } from './use-two-views'

type Moved = Way | 'hardly'
type Hand = 'left' | 'right'

const WAYS: readonly Way[] = ['mesial', 'distal']
const HANDS: readonly Hand[] = ['left', 'right']
const MOVED_MM: Record<Moved, number> = { mesial: 1, distal: -1, hardly: 0 } // only the way counts, not how far

interface Props {
  left?: MarkingShown | undefined
  right?: MarkingShown | undefined
}

interface Answers {
  readonly tube?: Way
  /** Without marks: which way the one line moved. */
  readonly moved?: Moved
  /** With marks: where on both images mesial is. */
  readonly mesial?: Hand
  readonly one?: string
  readonly other?: string
}

/** Two lines that lie over each other: which one is nearer to the tongue, by a second view with the tube moved. */
export function WhichSide({ left, right }: Props) {
  const [answers, setAnswers] = useState<Answers>({})
  const answer = (more: Answers) => setAnswers({ ...answers, ...more })
  const canals = left && right ? onBoth(left, right).filter((canal) => scaled(left, right, canal)) : []
  const asked = answers.one ?? canals[0]
  const others = canals.filter((canal) => canal !== asked)
  const other = others.find((canal) => canal === answers.other) ?? others[0]
  const pair = asked !== undefined && other !== undefined
  const moves =
    pair && left && right ? ([rightOfMm(left, asked, other), rightOfMm(right, asked, other)] as const) : undefined
  const shift = shiftOf(answers, moves)
  const [twoViews, problem] = useTwoViews(shift && { shift, bends: null })
  const says =
    twoViews?.one_is && (pair ? words.marks.liesOf(asked, other)[twoViews.one_is] : words.marks.lies[twoViews.one_is])
  return (
    <details class="which-side">
      <summary>{words.marks.whichSide}</summary>
      <div class="stack">
        <p>{words.marks.whichSideSays}</p>
        {canals.length > 2 && (
          <div class="row">
            <Pick
              label={words.marks.canal}
              of={canals}
              value={asked}
              onPick={(to) => setAnswers({ ...answers, one: to })}
            />
            <Pick label={words.marks.against} of={others} value={other} onPick={(to) => answer({ other: to })} />
          </div>
        )}
        <TwoViewsDrawing tube={answers.tube} canal={pair ? asked : undefined} other={other} lies={twoViews?.one_is} />
        <Choice
          label={words.marks.tubeMoved}
          options={WAYS.map((value) => ({ value, says: words.marks.way[value] }))}
          value={answers.tube}
          onChoose={(tube) => answer({ tube })}
        />
        {moves ? (
          <>
            <p class="small soft">{words.marks.liesRight(asked ?? '', other ?? '', said(moves[0]), said(moves[1]))}</p>
            <Choice
              label={words.marks.mesialIs}
              options={HANDS.map((value) => ({ value, says: words.marks.hand[value] }))}
              value={answers.mesial}
              onChoose={(mesial) => answer({ mesial })}
            />
          </>
        ) : (
          <Choice
            label={words.marks.lineMoved}
            options={[...WAYS, 'hardly' as const].map((value) => ({ value, says: words.marks.way[value] }))}
            value={answers.moved}
            onChoose={(moved) => answer({ moved })}
          />
        )}
        {twoViews?.one_is && (
          <Notice sign={twoViews.one_is === 'cannot_tell' ? 'caution' : 'approved'}>
            <b>{says}</b> {twoViews.why}
          </Notice>
        )}
        {problem && <Notice sign="stop">{problem}</Notice>}
      </div>
    </details>
  )
}

const scaled = (left: MarkingShown, right: MarkingShown, canal: string) =>
  rightOfMm(left, canal, canal) !== undefined && rightOfMm(right, canal, canal) !== undefined

const said = (to_the_right_mm: number | undefined) => {
  const mm = to_the_right_mm ?? 0
  return words.marks.toTheSide(tenth(Math.abs(mm)), mm >= 0)
}

/** What the server is asked: as marked, else as it was seen. */
function shiftOf({ tube, moved, mesial }: Answers, moves: readonly (number | undefined)[] | undefined) {
  if (!tube) return undefined
  if (!moves) return moved && { tube, first_mm: 0, second_mm: MOVED_MM[moved] }
  if (!mesial) return undefined
  const [first_mm, second_mm] = moves.map((mm) => (mesial === 'right' ? 1 : -1) * (mm ?? 0))
  return { tube, first_mm: first_mm ?? 0, second_mm: second_mm ?? 0 }
}

interface PickProps {
  label: string
  of: readonly string[]
  value: string | undefined
  onPick: (canal: string) => void
}

function Pick({ label, of, value, onPick }: PickProps) {
  const options = of.map((canal) => ({ value: canal, says: canal }))
  return <Select label={label} options={options} value={value ?? ''} onChoose={onPick} />
}
