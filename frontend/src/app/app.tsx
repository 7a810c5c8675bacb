import { EmergencyDoor } from '@/panels/emergency/emergency-door'
import { LooksFirst } from '@/panels/images/look-first'
import { Notice } from '@/parts/notice'
import { Page } from '@/parts/page'
import { address, match } from '@/router'
import { Account } from '@/screens/account/account'
import { Canal } from '@/screens/case/canal'
import { Case } from '@/screens/case/case'
import { Cases } from '@/screens/cases/cases'
import { Chair } from '@/screens/chair/chair'
import { HoldPointPage } from '@/screens/hold-point/hold-point'
import { Compare } from '@/screens/marks/compare'
import { MarksScreen } from '@/screens/marks/marks'
import { NewCase } from '@/screens/new-case/new-case'
import { NoWork } from '@/screens/no-work/no-work'
import { Planning } from '@/screens/plan/plan'
import { Record } from '@/screens/record/record'
import { Review } from '@/screens/review/review'
import { Share } from '@/screens/share/share'
import { FirstNotice, SignIn } from '@/screens/sign-in/sign-in'
import { CloseVisit } from '@/screens/visit/close'
import { ReopenVisit } from '@/screens/visit/reopen'
import { ToldToSupervisors } from '@/screens/worklist/told-to-supervisors'
import { Worklist } from '@/screens/worklist/worklist'
import { cannotRead, tab } from '@/store/device/database'
import { noticeRead, readNotice } from '@/store/device/preferences'
import { membership, personId, sessionState } from '@/store/session/session'
import { words } from '@/words/en'
import { newVersion } from '@/worker/register'

/** Screens that show work, or take something in: they would lack what waits, or lose it. */
const OF_WORK = /^\/(?:share|cases\/(?:new$|(?<id>[^/?]+)))/

type Screen = (parts: Record<string, string>) => preact.JSX.Element

const SCREENS: readonly (readonly [string, Screen])[] = [
  ['/cases', () => <Cases />],
  ['/cases/new', () => <NewCase />],
  ['/cases/:id', ({ id = '' }) => <Case id={id} key={id} />],
  ['/cases/:id/plan', ({ id = '' }) => <Planning id={id} key={id} />],
  ['/cases/:id/chair', ({ id = '' }) => <Chair id={id} key={id} />],
  ['/cases/:id/record', ({ id = '' }) => <Record id={id} key={id} />],
  ['/cases/:id/chair/close', ({ id = '' }) => <CloseVisit id={id} key={id} />],
  ['/cases/:id/chair/reopen', ({ id = '' }) => <ReopenVisit id={id} key={id} />],
  [
    '/cases/:id/word/:canal',
    ({ id = '', canal = '' }) => <HoldPointPage caseId={id} canal={canal} key={`${id} ${canal}`} />,
  ],
  ['/cases/:id/canals/:canal', ({ id = '', canal = '' }) => <Canal caseId={id} canalId={canal} key={canal} />],
  ['/cases/:id/images', ({ id = '' }) => <Compare caseId={id} key={id} />],
  ['/cases/:id/images/:image', ({ id = '', image = '' }) => <MarksScreen caseId={id} imageId={image} key={image} />],
  ['/worklist', () => <Worklist />],
  ['/plans/:id', ({ id = '' }) => <Review id={id} key={id} />],
  ['/share', () => <Share />],
  ['/account', () => <Account />],
]

/** Where a case is worked: there an emergency may have to be told at any moment. */
const AT_CHAIR = /^\/cases\/([^/?]+)\/(?:chair|word)\b/

/** The screen of the present address, behind sign-in and the first notice. */
export function App() {
  if (sessionState.value === 'asking') return <OtherTab or={<output class="unseen">{words.loading}</output>} />
  if (sessionState.value === 'out')
    return (
      <>
        <OtherTab />
        <SignIn />
      </>
    )
  if (!noticeRead.value) return <FirstNotice onUnderstood={readNotice} />
  const supervises = membership.value !== undefined && membership.value.role !== 'student'
  const expired = sessionState.value === 'expired'
  const ofCase = OF_WORK.exec(address.value)?.groups?.id
  const atChair = AT_CHAIR.exec(address.value)?.[1]
  return (
    <>
      <a class="skip" href="#main">
        {words.skip}
      </a>
      {newVersion.value && <Notice action={{ says: words.takeUp, onDo: newVersion.value }}>{words.newVersion}</Notice>}
      <OtherTab />
      {supervises && <ToldToSupervisors key={`told ${personId()}`} />}
      <div class="under" inert={expired} key={personId()}>
        {screenAt(address.value)}
        {ofCase && <LooksFirst caseId={ofCase} />}
      </div>
      {expired && <SignIn again above={atChair && <EmergencyDoor caseId={atChair} />} />}
    </>
  )
}

/** Two versions of the app on one phone: the older one reloads, the newer one waits for it; and a store that is away. */
function OtherTab({ or = null }: { or?: preact.JSX.Element | null }) {
  if (tab.value === 'waits') return <Notice sign="caution">{words.phone.waits}</Notice>
  if (tab.value === 'away') return <Notice sign="stop">{words.phone.away}</Notice>
  if (tab.value === 'alone') return or
  return (
    <Notice sign="stop" action={{ says: words.phone.reload, onDo: () => location.reload() }}>
      {words.phone[tab.value]}
    </Notice>
  )
}

function screenAt(path: string): preact.JSX.Element {
  const first = membership.value?.role === 'student' ? '/cases' : '/worklist'
  const wanted = path.split('?')[0] === '/' ? first : path
  const work = cannotRead.value && OF_WORK.exec(wanted)
  if (work) return <NoWork caseId={work.groups?.id} />
  for (const [pattern, screen] of SCREENS) {
    const parts = match(pattern, wanted)
    if (parts) return screen(parts)
  }
  return (
    <Page title={words.notFound.title}>
      <p>{words.notFound.says}</p>
      <a class="button" href="/">
        {words.notFound.home}
      </a>
    </Page>
  )
}
