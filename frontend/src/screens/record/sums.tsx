import type { ComponentChildren } from 'preact'
import type { RecordValue } from '@/api/shapes'
import { ImagesOf } from '@/panels/images/images-of'
import { Sign } from '@/parts/signs'
import { mm } from '@/units/millimetres'
import { words } from '@/words/en'
import { restsOn, sizesOf } from './canal'

const said = words.record

/** What the course comes to, decisions first. A part that has nothing to tell is left out. */
export function Sums({ of }: { of: RecordValue }) {
  return (
    <div>
      <SignOffs of={of} />
      <Decisions of={of} />
      <Lengths of={of} />
      <Asked of={of} />
      <Instruments of={of} />
      <Part title={said.irrigants}>
        {of.irrigants.map((rinse) => (
          <Line
            key={rinse.irrigant}
            says={`${words.irrigant(rinse.irrigant)}: ${words.chair.millilitres(rinse.volume_ml)}`}
            more={[
              rinse.canals
                .map((each) => `${each.canal || said.tooth} ${words.chair.millilitres(each.volume_ml)}`)
                .join(' · '),
            ]}
          />
        ))}
      </Part>
      <Part title={said.visits}>
        {of.visits.map((visit) => (
          <Line
            key={visit.number}
            says={`${said.visit(visit.number)}: ${said.at(visit.opened_at)}, ${visit.opened_by.name}`}
            more={[
              visit.on_site.length > 0 && said.inTheRoom(visit.on_site.map((who) => who.name).join(', ')),
              visit.closed_at && visit.closed_by
                ? said.closed(said.at(visit.closed_at), visit.closed_by.name, visit.access_sealed ?? false)
                : said.stillOpen,
              visit.note,
            ]}
          />
        ))}
      </Part>
      <Halts of={of} />
      <Cautions of={of} />
      <Part title={said.images}>
        {of.images.map((image) => (
          <Line
            key={image.position}
            says={`${image.canal || said.tooth}: ${image.purpose}`}
            more={[by(image), countsNot(image), removal(image)]}
          />
        ))}
      </Part>
      <ImagesOf
        caseId={of.case_id}
        ids={of.images.flatMap(({ image_id: image, removed }) => (removed ? [] : [image]))}
      />
    </div>
  )
}

/** Every canal's length and what it rests on, its size as planned and as done. */
function Lengths({ of }: { of: RecordValue }) {
  return (
    <Part title={said.lengths}>
      {of.canals.map((canal) => (
        <Line
          key={canal.canal}
          says={
            <span class="row apart">
              <b>{canal.canal}</b>
              <span class="number">{canal.length?.stop_mm == null ? said.noLength : mm(canal.length.stop_mm)}</span>
            </span>
          }
          more={[restsOn(canal), sizesOf(canal)]}
        />
      ))}
    </Part>
  )
}

/** A record that was kept from before images could be put right does not say. */
function countsNot({ counts }: RecordValue['images'][number]): string | null {
  return counts === false ? words.images.putRight.countsNot : null
}

function removal({ removed }: RecordValue['images'][number]): string | null {
  const { said: removedFor, reasons } = words.images.remove
  return removed ? `${removedFor(reasons[removed.reason])} ${by(removed)}` : null
}

/** Who and when. */
function by({ who, at }: { who: { name: string }; at: string }): string {
  return `${who.name}, ${said.at(at)}`
}

function Part({ title, open = false, children }: { title: string; open?: boolean; children: ComponentChildren[] }) {
  if (children.length === 0) return null
  return (
    <details class="record-part" open={open}>
      <summary>
        <h2>{title}</h2> <span class="soft">{children.length}</span>
      </summary>
      <ul class="ledger record-lines">{children}</ul>
    </details>
  )
}

interface LineProps {
  says: ComponentChildren
  more?: readonly (string | false | null)[]
}

function Line({ says, more = [] }: LineProps) {
  return (
    <li>
      <p>{says}</p>
      {more.filter(Boolean).map((each) => (
        <p key={each} class="small soft">
          {each}
        </p>
      ))}
    </li>
  )
}

/** A record that was kept from before this was counted does not say. */
function Asked({ of: { asked } }: { of: RecordValue }) {
  if (!asked) return null
  const { sign_offs: signOffs, planned_sign_offs, exposures, planned_exposures } = asked
  return (
    <Part title={words.together.title}>
      {[
        <Line
          key="w"
          says={`${words.together.signOffs}: ${words.together.counted(signOffs, planned_sign_offs)}`}
          more={[]}
        />,
        <Line
          key="e"
          says={`${words.together.exposures}: ${words.together.counted(exposures, planned_exposures)}`}
          more={[]}
        />,
      ]}
    </Part>
  )
}

function SignOffs({ of }: { of: RecordValue }) {
  return (
    <Part title={said.signOffs} open>
      {of.sign_offs.map((signOff) => {
        const marks = [
          signOff.despite_missing && said.despiteMissing,
          signOff.on_site && said.onSite,
          !signOff.in_course && said.notInCourse,
        ]
        return (
          <Line
            key={signOff.position}
            says={
              <>
                <Sign name={signOff.said} /> <b>{signOff.canal}</b> {said.point(signOff.hold_point)}:{' '}
                {[said.said[signOff.said], ...marks].filter(Boolean).join(', ')}
              </>
            }
            more={[signOff.reason, signOff.image_gone && words.images.putRight.rested, by(signOff)]}
          />
        )
      })}
    </Part>
  )
}

function Halts({ of }: { of: RecordValue }) {
  return (
    <Part title={said.halts}>
      {of.halts.map((halt) => (
        <Line
          key={halt.position}
          says={
            <>
              <Sign name={halt.kind === 'pause' ? 'caution' : 'stop'} /> <b>{halt.canal || said.tooth}</b> {halt.says}
            </>
          }
          more={[
            halt.cause && said.cause(halt.cause),
            by(halt),
            halt.review_by &&
              `${words.together.review(said.at(halt.review_by))}: ${halt.seen_again ? words.together.seenAgain(said.at(halt.seen_again)) : words.together.notSeenAgain}`,
            halt.ended ? said.ended(halt.ended.who.name, said.at(halt.ended.at), halt.ended.reason) : said.stands,
          ]}
        />
      ))}
    </Part>
  )
}

function Decisions({ of }: { of: RecordValue }) {
  return (
    <Part title={said.plans} open>
      {of.versions.map((version) => (
        <Line
          key={version.number}
          says={said.version(version.number, version.technique, version.kit)}
          more={
            version.decisions.length === 0
              ? [said.undecided]
              : version.decisions.flatMap((each) => [
                  [said.said[each.decision], by(each), each.note].filter(Boolean).join(' · '),
                  ...each.acknowledged.map((bar) => said.acknowledged(bar.canal, bar.says)),
                  ...(each.own_lengths ?? []).map((own) => said.measured(own.canal, mm(own.length_mm))),
                ])
          }
        />
      ))}
    </Part>
  )
}

function Cautions({ of }: { of: RecordValue }) {
  return (
    <>
      <Part title={said.cautions}>
        {of.cautions.map((caution, number) => (
          <Line
            key={number}
            says={
              <>
                <Sign name={caution.severity} /> {caution.says}
              </>
            }
            more={[said.settled[caution.settled]]}
          />
        ))}
      </Part>
      <Part title={said.overrides}>
        {of.overrides.map((override) => (
          <Line
            key={override.at}
            says={`${override.canal ?? said.tooth}: ${override.code}. ${override.final_size == null ? '' : `${words.override.size(override.final_size)} `}${override.reason}`}
            more={[
              by(override),
              override.withdrawn_by &&
                override.withdrawn_at &&
                said.withdrawnBy(override.withdrawn_by.name, said.at(override.withdrawn_at)),
            ]}
          />
        ))}
      </Part>
    </>
  )
}

function Instruments({ of }: { of: RecordValue }) {
  return (
    <>
      <Part title={said.instruments}>
        {of.instruments.map((instrument) => (
          <Line
            key={instrument.key}
            says={
              <span class="row apart">
                <span>
                  {instrument.key}: {instrument.canals.join(', ')}
                </span>
                <span class="number">
                  {said.uses(instrument.uses, instrument.most_uses)}
                  {instrument.most_uses !== null && instrument.uses > instrument.most_uses && ` ${said.tooMany}`}
                </span>
              </span>
            }
            more={[instrument.discarded > 0 && said.discardedTimes(instrument.discarded)]}
          />
        ))}
      </Part>
      <Part title={said.discarded}>
        {of.discarded.map((discard) => (
          <Line
            key={discard.position}
            says={[discard.instrument, discard.canal, discard.why].filter(Boolean).join(', ')}
            more={[by(discard)]}
          />
        ))}
      </Part>
    </>
  )
}
