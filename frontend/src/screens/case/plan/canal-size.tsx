import { useId } from 'preact/hooks'
import type { CanalChoice, CanalPlan, Kit, SizeReason } from '@/api/shapes'
import { sizesOf } from '@/panels/plan/asked'
import { TextField } from '@/parts/fields'
import { advised, isWide, sizeOf } from '@/parts/final-size'
import { Known } from '@/parts/known'
import { Notice } from '@/parts/notice'
import { Why } from '@/parts/rationale/why'
import { words } from '@/words/en'
import { InOrOut, OptionFacts, SizesCompared } from './size-options'

interface Props {
  canal: CanalPlan
  kit: Kit | undefined
  choice: CanalChoice | undefined
  /** A supervisor has chosen the size of this wide canal. */
  decided: boolean
  onChoose: (change: Partial<CanalChoice>) => void
}

/** The final size of one canal: the advised range with its reasons, what each size means, a reason outside the range. */
export function CanalSize({ canal, kit, choice, decided, onChoose }: Props) {
  const id = useId()
  const wide = isWide(canal.size_range)
  const size = decided ? canal.final_size : (choice?.final_size ?? canal.final_size)
  const sizes = sizesOf(kit)
  const { least, most, proposed, reasons, options } = canal.size_range
  // Where no size is set yet, stepping begins at what the canal asks for.
  const from = size ?? least - 1
  const next = (by: -1 | 1) => (by > 0 ? sizes.find((s) => s > from) : sizes.findLast((s) => s < from))
  const inside = size !== null && least <= size && size <= most
  // What is proposed anyway is no choice: stepping there and back changes nothing of what went in.
  const takeProposed = () => onChoose({ final_size: null, reason: '' })
  const take = (to: number | undefined) =>
    to !== undefined && (to === proposed ? takeProposed() : onChoose({ final_size: to }))
  return (
    <section class="stack close canal-size" aria-labelledby={`${id}-name`}>
      <div class="row apart">
        <h3 id={`${id}-name`}>{words.planning.finalSize(canal.canal)}</h3>
        <p class="small">
          {words.planning.advised}{' '}
          <Why
            canal={canal.canal}
            of={['size_range.least', 'size_range.most']}
            title={words.rationale.size}
            value={advised(canal.size_range)}
          />
        </p>
      </div>
      {wide && (
        <Notice sign={decided ? 'approved' : 'stop'}>
          <b>{words.size.wide}</b> {decided ? words.size.decided(sizeOf(canal)) : words.size.wideDo}
          {!decided && size !== null && ` ${words.size.wish}`}
        </Notice>
      )}
      {!decided && (
        <div class="stepper">
          <button type="button" class="button" disabled={next(-1) === undefined} onClick={() => take(next(-1))}>
            <span aria-hidden="true">−</span>
            <span class="unseen">{words.planning.smaller(canal.canal)}</span>
          </button>
          <output class="size-now number" aria-live="polite">
            {sizeOf({ ...canal, final_size: size })}
            {!wide && <InOrOut inside={inside} />}
          </output>
          <button type="button" class="button" disabled={next(1) === undefined} onClick={() => take(next(1))}>
            <span aria-hidden="true">+</span>
            <span class="unseen">{words.planning.larger(canal.canal)}</span>
          </button>
        </div>
      )}
      {size !== null && <OptionFacts canal={canal.canal} options={options} size={size} />}
      {!inside && !wide && (
        <TextField
          label={words.planning.outside}
          hint={words.planning.outsideHint}
          value={choice?.reason ?? ''}
          maxLength={300}
          onInput={(reason) => onChoose({ reason })}
        />
      )}
      {proposed !== null && size !== proposed && (
        <button type="button" class="button plain" onClick={takeProposed}>
          {words.planning.takeProposed(proposed)}
        </button>
      )}
      <SizesCompared
        canal={canal.canal}
        options={options}
        size={size ?? 0}
        sizes={decided ? [] : sizes}
        onTake={take}
      />
      <SizeReasons reasons={reasons} />
    </section>
  )
}

/** Why the advised range is what it is: each reason with its source and how that is known. */
function SizeReasons({ reasons }: { reasons: readonly SizeReason[] }) {
  return (
    <details>
      <summary>{words.planning.reasons}</summary>
      <ul class="ledger">
        {reasons.map((reason) => (
          <li key={reason.code + reason.says} class="stack close figure">
            <p>{reason.says}</p>
            <p class="small soft">{reason.source}</p>
            <Known know={reason.know} />
          </li>
        ))}
      </ul>
    </details>
  )
}
