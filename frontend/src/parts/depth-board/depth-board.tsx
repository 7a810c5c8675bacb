import { words } from '@/words/en'
import { CanalColumn } from './canal-column'
import { BoardFrame } from './frame'
import { layOut } from './geometry'
import { marksOf, type Sign, zonesOf } from './marks'
import { Meeting, sideOf } from './meeting'
import type { DrawnProgress } from './moments'
import type { BoardCanal, CoronalStop, Silhouette } from './shape'
import { describe, lengthsOf } from './shape'
import { Touches } from './touches'

interface Props {
  canals: readonly BoardCanal[]
  coronal?: readonly CoronalStop[]
  /** The same canals in the version this one is compared with: its outline is laid over. */
  before?: readonly BoardCanal[] | undefined
  picked?: string | undefined
  /** Makes a canal that is touched the selected one; its marks answer from then on, without it those of all do. */
  onPick?: ((canal: string) => void) | undefined
  /** How far the work has come; nothing shows the plan as a whole. */
  progress?: DrawnProgress | undefined
  silhouettes?: ReadonlyMap<string, Silhouette>
  /** What is drawn beside a canal's name as long as it stands. */
  cautions?: readonly Sign[]
  nameOf?: (instrument: string) => string
  /** How far the work has come, by canal, in a word; it stands where the reference point does. */
  states?: ReadonlyMap<string, string> | undefined
  /** How high a place must be to be hit: more with gloves. */
  touch_px?: number
}

const NO_SILHOUETTES: ReadonlyMap<string, Silhouette> = new Map()
const TOUCH_PX = 44

/** What is planned of all canals of a tooth, at true taper and depth. */
export function DepthBoard(props: Props) {
  const { canals, coronal = [], before, picked, onPick, progress, silhouettes = NO_SILHOUETTES } = props
  const { cautions = [], nameOf = (key) => key, states, touch_px = TOUCH_PX } = props
  const signsOf = (canal: BoardCanal) => standingIn(canal.canal, cautions)
  const coronalOf = (canal: BoardCanal) => coronal.find((c) => c.canal === canal.canal)
  return (
    <BoardFrame
      name={words.board.name}
      says={describe(canals, coronal, before)}
      caption={(board) => words.board.caption(board.widened, before !== undefined, oval(canals))}
      columns={canals.map((canal) => ({
        canal: canal.canal,
        under: states?.get(canal.canal) ?? canal.reference_point,
        grave: gravest(signsOf(canal)),
        says: saysOf(canal, signsOf(canal), states?.get(canal.canal)),
      }))}
      picked={picked}
      onPick={onPick}
      layOut={({ width, height }) => layOut(width, height, canals, before, silhouettes.values())}
      drawn={(board, hatch) => (
        <>
          {canals.map((canal, i) => (
            <Meeting key={canal.canal} board={board} canals={canals} index={i} />
          ))}
          {canals.map((canal, i) => (
            <CanalColumn
              key={canal.canal}
              place={{ board, index: i, canal, side: sideOf(canals, i) }}
              canal={canal}
              before={before?.find((b) => b.canal === canal.canal)}
              coronal={coronalOf(canal)}
              hatch={hatch}
              picked={canal.canal === picked}
              progress={progress}
              silhouettes={silhouettes}
            />
          ))}
        </>
      )}
      over={(board) => (
        <Touches
          board={board}
          zones={canals.map((canal) => {
            if (onPick && canal.canal !== picked) return [canal.canal, []] as const
            const drawn = { board, canal, coronal: coronalOf(canal), signs: signsOf(canal), progress, nameOf }
            return [canal.canal, zonesOf(marksOf(drawn), touch_px)] as const
          })}
        />
      )}
    />
  )
}

const oval = (canals: readonly BoardCanal[]) =>
  canals.some((c) => c.expectation?.initial_shape.points.some((p) => p.wide_mm > p.narrow_mm) ?? false)

/** What still stands in a canal's way, or is to be borne in mind. */
function standingIn(canal: string, cautions: readonly Sign[]): Sign[] {
  return cautions.filter(
    (caution) => caution.canal === canal && caution.severity !== 'note' && caution.overridden == null,
  )
}

const gravest = (signs: readonly Sign[]) =>
  signs.some(({ severity }) => severity === 'stop') ? 'stop' : signs.length > 0 ? 'caution' : undefined

function saysOf(of: BoardCanal, signs: readonly Sign[], state: string | undefined): string {
  const grave = gravest(signs)
  const ends = of.end_mm === null ? [] : lengthsOf(of.end_mm, of.length, !of.provisional)
  return words.board.column(of.canal, ends.join(' '), [state, grave && words.state[grave]])
}
