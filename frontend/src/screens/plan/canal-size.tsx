import { useId } from 'preact/hooks'
import type { CanalChoice, CanalPlan, Kit } from '@/api/shapes'
import { sizeOf } from '@/parts/difference/compare'
import { TextField } from '@/parts/fields'
import { Tapped } from '@/parts/reason/reasons'
import { words } from '@/words/en'
import { sizesOf } from './asked'
import { InOrOut, OptionFacts, SizesCompared } from './size-options'
import { SizeReasons } from './size-reasons'

interface Props {
  canal: CanalPlan
  kit: Kit | undefined
  choice: CanalChoice | undefined
  onChoose: (change: Partial<CanalChoice>) => void
}

/** The final size of one canal: the advised range with its reasons, what each size means, a reason outside the range. */
export function CanalSize({ canal, kit, choice, onChoose }: Props) {
  const id = useId()
  const size = choice?.final_size ?? canal.final_size
  const sizes = sizesOf(kit)
  const next = (by: -1 | 1) => (by > 0 ? sizes.find((s) => s > size) : sizes.findLast((s) => s < size))
  const { least, most, proposed, reasons, options } = canal.size_range
  const inside = least <= size && size <= most
  const take = (to: number | undefined) => to !== undefined && onChoose({ final_size: to })
  return (
    <section class="card stack canal-size" aria-labelledby={`${id}-name`}>
      <div class="row apart">
        <h2 id={`${id}-name`}>{words.planning.finalSize(canal.canal)}</h2>
        <p class="small">
          {words.planning.advised}{' '}
          <Tapped
            canal={canal.canal}
            of={['size_range.least', 'size_range.most']}
            title={words.because.size}
            value={`${least}–${most}`}
          />
        </p>
      </div>
      <div class="stepper">
        <button type="button" class="button" disabled={next(-1) === undefined} onClick={() => take(next(-1))}>
          <span aria-hidden="true">−</span>
          <span class="unseen">{words.planning.smaller(canal.canal)}</span>
        </button>
        <output class="size-now number" aria-live="polite">
          {choice?.final_size == null ? sizeOf(canal) : sizeOf({ ...canal, final_size: size })}
          <InOrOut inside={inside} />
        </output>
        <button type="button" class="button" disabled={next(1) === undefined} onClick={() => take(next(1))}>
          <span aria-hidden="true">+</span>
          <span class="unseen">{words.planning.larger(canal.canal)}</span>
        </button>
      </div>
      <OptionFacts canal={canal.canal} options={options} size={size} />
      {!inside && (
        <TextField
          label={words.planning.outside}
          hint={words.planning.outsideHint}
          value={choice?.reason ?? ''}
          maxLength={300}
          onInput={(reason) => onChoose({ reason })}
        />
      )}
      {size !== proposed && (
        <button type="button" class="button plain" onClick={() => onChoose({ final_size: null, reason: '' })}>
          {words.planning.takeProposed(proposed)}
        </button>
      )}
      <SizesCompared canal={canal.canal} options={options} size={size} sizes={sizes} onTake={take} />
      <SizeReasons reasons={reasons} />
    </section>
  )
}
