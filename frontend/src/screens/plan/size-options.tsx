import type { SizeOption } from '@/api/shapes'
import { mm } from '@/parts/millimetres'
import { Tapped } from '@/parts/reason/reasons'
import { Sign } from '@/parts/signs'
import { words } from '@/words/en'

/** Inside or outside the advised range, by sign and word. */
export function InOrOut({ inside }: { inside: boolean }) {
  return (
    <span class="in-or-out small" data-inside={inside}>
      <Sign name={inside ? 'approved' : 'caution'} /> {inside ? words.size.inside : words.size.outside}
    </span>
  )
}

interface FactsProps {
  canal: string
  options: readonly SizeOption[]
  size: number
}

/** What one size means for this canal; nothing where the planner gives no figures for it. */
export function OptionFacts({ canal, options, size }: FactsProps) {
  const at = options.findIndex((o) => o.size === size)
  const option = options[at]
  if (!option) return null
  const facts = [
    ['wall_share', words.size.reached, share(option.wall_share)],
    ['wall_left_mm', words.size.left, left(option.wall_left_mm)],
    ['strain_pct', words.size.strain, strain(option.strain_pct)],
  ] as const
  const known = facts.filter(([, , value]) => value !== undefined)
  if (known.length === 0) return null
  return (
    <dl class="size-facts">
      {known.map(([field, label, value]) => (
        <div key={field}>
          <dt class="small soft">{label}</dt>
          <dd class="number">
            <Tapped canal={canal} of={`size_range.options[${at}].${field}`} title={label} value={value ?? ''} />
          </dd>
        </div>
      ))}
    </dl>
  )
}

interface ComparedProps extends FactsProps {
  /** Sizes of the kit: only these can be taken. */
  sizes: readonly number[]
  onTake: (size: number) => void
}

/** All sizes that may be chosen side by side; a touch takes one. */
export function SizesCompared({ canal, options, size, sizes, onTake }: ComparedProps) {
  if (options.length === 0) return null
  return (
    <details>
      <summary>{words.size.compare}</summary>
      <table class="sizes">
        <caption class="unseen">{words.size.caption(canal)}</caption>
        <thead>
          <tr>
            <th scope="col">{words.size.size}</th>
            <th scope="col">{words.size.reached}</th>
            <th scope="col">{words.size.left}</th>
            <th scope="col">{words.size.strain}</th>
          </tr>
        </thead>
        <tbody>
          {options.map((option) => (
            <tr key={option.size} aria-current={option.size === size ? 'true' : undefined}>
              <th scope="row">
                <button
                  type="button"
                  class="take"
                  disabled={!sizes.includes(option.size)}
                  onClick={() => onTake(option.size)}
                >
                  <span class="unseen">{words.size.take(canal)}</span>
                  <b>{option.size}</b> <InOrOut inside={option.inside} />
                </button>
              </th>
              <td>{share(option.wall_share) ?? <NotKnown />}</td>
              <td>{left(option.wall_left_mm) ?? <NotKnown />}</td>
              <td>{strain(option.strain_pct) ?? <NotKnown />}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </details>
  )
}

const NotKnown = () => (
  <>
    <span aria-hidden="true">–</span>
    <span class="unseen">{words.size.notKnown}</span>
  </>
)

const share = (value: number | null) => (value === null ? undefined : words.size.percent(Math.round(value * 100)))
const left = (value_mm: number | null) => (value_mm === null ? undefined : `${mm(value_mm)} mm`)
const strain = (value_pct: number | null) => (value_pct === null ? undefined : words.size.percent(value_pct))
