import { useRef, useState } from 'preact/hooks'
import type { CaseShown, MarkingShown, Views } from '@/api/shapes'
import { usePercent } from '@/panels/marks/marked-list'
import { bendOf, bendsRight, onBoth } from '@/panels/marks/two-markings'
import { BOUNDS, wrongOf } from '@/parts/bounds'
import { Choice, Select, Stepper } from '@/parts/fields'
import { Notice } from '@/parts/notice'
import { Sent } from '@/parts/sent'
import { uuid7 } from '@/store/device/uuid7'
import { useSending } from '@/store/forms/sending'
import { combineViews, useBendsInSpace } from '@/store/images/markings'
import { readMm } from '@/units/millimetres'
import { words } from '@/words/en'
import { useTwoViews } from './use-two-views'

interface Props {
  of: CaseShown
  left: MarkingShown
  right: MarkingShown
}

type Side = 'same' | 'other'

/** The bend of a canal in space, from the two images that lie side by side. */
export function BendInSpace({ of, left, right }: Props) {
  const canals = of.canals.filter(
    ({ name }) => onBoth(left, right).includes(name) && bendOf(left, name) && bendOf(right, name),
  )
  const [picked, setPicked] = useState<string>()
  const canal = canals.find(({ name }) => name === picked) ?? canals[0]
  return (
    <details class="which-side">
      <summary>{words.marks.bendInSpace}</summary>
      <div class="stack">
        {!canal && <p>{words.marks.bendOnBoth}</p>}
        {canals.length > 1 && (
          <Select
            label={words.marks.canal}
            options={canals.map(({ name }) => ({ value: name, says: name }))}
            value={canal?.name ?? ''}
            onChoose={setPicked}
          />
        )}
        {canal && (
          <OfCanal key={`${canal.id} ${left.id} ${right.id}`} caseId={of.id} canal={canal} left={left} right={right} />
        )}
      </div>
    </details>
  )
}

function OfCanal({
  caseId,
  canal,
  left,
  right,
}: Omit<Props, 'of'> & { caseId: string; canal: CaseShown['canals'][number] }) {
  const id = useRef(uuid7())
  const [apart, setApart] = useState('')
  const [turned, setTurned] = useState<Side>()
  const [sending, run] = useSending(() => {
    id.current = uuid7()
  })
  const side = turned ?? (bendsRight(left, canal.name) === bendsRight(right, canal.name) ? 'same' : 'other')
  const apart_deg = readMm(apart)
  const percent = usePercent(caseId)
  const [inSpace, problem] = useTwoViews(viewsOf(left, right, canal.name, side, apart_deg))
  const change = () => {
    id.current = uuid7()
  }
  const keep = () => {
    const body = { first_id: left.id, second_id: right.id, apart_deg: apart_deg ?? 0, other_side: side === 'other' }
    void run(() => combineViews(caseId, canal.id, id.current, body))
  }
  return (
    <>
      <p>
        {words.marks.bendsSeen(
          canal.name,
          whole(bendOf(left, canal.name)?.value),
          whole(bendOf(right, canal.name)?.value),
        )}
      </p>
      <Stepper
        label={words.marks.tubeTurned}
        hint={words.marks.tubeTurnedHint}
        value={apart}
        onInput={(typed) => {
          setApart(typed)
          change()
        }}
        {...BOUNDS.tube_turn}
        wrong={apart.trim() ? wrongOf('tube_turn', apart) : undefined}
      />
      <Choice
        label={words.marks.bendsTo}
        options={[
          { value: 'same', says: words.marks.bendSide.same },
          { value: 'other', says: words.marks.bendSide.other },
        ]}
        value={side}
        onChoose={(to) => {
          setTurned(to)
          change()
        }}
      />
      {problem && <Notice sign="stop">{problem}</Notice>}
      {inSpace?.in_space && (
        <>
          <p>
            <b class="number">{words.marks.inSpace(whole(inSpace.in_space.value))}</b>{' '}
            <span class="soft">
              {words.marks.angleWithin(percent, whole(inSpace.in_space.least), whole(inSpace.in_space.most ?? 0))}
            </span>
          </p>
          <button type="button" class="button main" disabled={sending.state === 'busy'} onClick={keep}>
            {words.marks.keepBend(canal.name)}
          </button>
        </>
      )}
      <Sent sending={sending} again={keep} />
      <KeptBends canalId={canal.id} percent={percent} />
    </>
  )
}

const whole = (deg: number | undefined) => Math.round(deg ?? 0)

/** What was combined before, the latest first. */
function KeptBends({ canalId, percent }: { canalId: string; percent: number | undefined }) {
  const kept = useBendsInSpace(canalId).value?.results ?? []
  return (
    <ul class="marks-made">
      {[...kept].reverse().map((bend) => (
        <li key={bend.id}>
          <b>{words.marks.by(bend.number, bend.made_by.name, words.when(bend.at))}</b> ·{' '}
          {words.marks.inSpace(whole(bend.in_space.value))}{' '}
          {words.marks.angleWithin(percent, whole(bend.in_space.least), whole(bend.in_space.most ?? 0))}
          {bend.outdated && ` · ${words.marks.outdated}`}
        </li>
      ))}
    </ul>
  )
}

/** What the server is asked; nothing as long as something is missing. */
function viewsOf(
  left: MarkingShown,
  right: MarkingShown,
  canal: string,
  side: Side,
  apart_deg: number | undefined,
): Views | undefined {
  const [first, second] = [bendOf(left, canal), bendOf(right, canal)]
  if (!first || !second || !apart_deg) return undefined
  const second_deg = side === 'other' ? -second.value : second.value
  const within = { first_within: first, second_within: second }
  return { shift: null, bends: { first_deg: first.value, second_deg, apart_deg, ...within } }
}
