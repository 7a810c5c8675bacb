import type { Difficulty } from '@/api/shapes'
import { Known } from '@/parts/known'
import { Sign, type SignName } from '@/parts/signs'
import { words } from '@/words/en'
import './difficulty.css'

type Level = Difficulty['level']

const SIGNS: Record<Level, SignName> = { low: 'note', moderate: 'caution', high: 'stop' }

/** A level of difficulty by sign and word. */
export function LevelMark({ level, says }: { level: Level; says?: string }) {
  return (
    <span class="level" data-level={level}>
      <Sign name={SIGNS[level]} /> {says ?? words.difficulty.level(level)}
    </span>
  )
}

/** How difficult the case is, what makes it so, and the rule by which that was counted. */
export function DifficultyCard({ difficulty }: { difficulty: Difficulty }) {
  const { level, factors, rule, source, know } = difficulty
  return (
    <section class="card stack close" aria-label={words.difficulty.title}>
      <h2>
        <LevelMark level={level} />
      </h2>
      {factors.length > 0 && (
        <ul class="ledger">
          {factors.map((factor) => (
            <li key={factor.code} class="figure">
              <p>
                <LevelMark level={factor.level} says={words.difficulty.levels[factor.level]} /> {factor.says}
              </p>
              <p class="small soft">{factor.from_plan ? words.difficulty.fromPlan : words.difficulty.recorded}</p>
            </li>
          ))}
        </ul>
      )}
      <p>{rule}</p>
      <p class="small soft">{source}</p>
      <Known know={know} />
    </section>
  )
}
