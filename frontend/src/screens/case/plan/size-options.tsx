import type { SizeOption } from '@/api/shapes'
import { Why } from '@/parts/rationale/why'
import { Sign } from '@/parts/signs'
import { mm } from '@/units/millimetres'
import { words } from '@/words/en'

interface Column {
  readonly field: string
  readonly label: string
  /** As it is shown; nothing where it is not known. */
  readonly of: (option: SizeOption) => string | undefined
}

const { percent } = words.size

const COLUMNS: readonly Column[] = [
  {
    field: 'wall_share',
    label: words.size.reached,
    of: ({ wall_share }) => (wall_share === null ? undefined : percent(Math.round(wall_share * 100))),
  },
  {
    field: 'wall_left_mm',
    label: words.size.left,
    of: ({ wall_left_mm }) => (wall_left_mm === null ? undefined : `${mm(wall_left_mm)} mm`),
  },
  {
    field: 'strain_pct',
    label: words.size.strain,
    of: ({ strain_pct }) => (strain_pct === null ? undefined : percent(strain_pct)),
  },
]

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
  const known = COLUMNS.map((c) => ({ ...c, value: c.of(option) })).filter((c) => c.value !== undefined)
  if (known.length === 0) return null
  return (
    <dl class="size-facts">
      {known.map(({ field, label, value }) => (
        <div key={field}>
          <dt class="small soft">{label}</dt>
          <dd class="number">
            <Why canal={canal} of={`size_range.options.${at}.${field}`} title={label} value={value ?? ''} />
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
  // A column that is known for no size says nothing.
  const columns = COLUMNS.filter(({ of }) => options.some((option) => of(option) !== undefined))
  return (
    <details>
      <summary>{words.size.compare}</summary>
      <table class="sizes">
        <caption class="unseen">{words.size.caption(canal)}</caption>
        <thead>
          <tr>
            <th scope="col">{words.size.size}</th>
            {columns.map(({ label }) => (
              <th scope="col" key={label}>
                {label}
              </th>
            ))}
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
              {columns.map(({ label, of }) => (
                <td key={label}>{of(option) ?? <NotKnown />}</td>
              ))}
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
