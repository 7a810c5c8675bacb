import { Notice } from '@/parts/notice'
import { address } from '@/router'
import { FirstNotice, SignIn } from '@/screens/sign-in/sign-in'
import { cannotRead, tab } from '@/store/device/database'
import { noticeRead, readNotice } from '@/store/device/preferences'
import { membership, personId, sessionState } from '@/store/session/session'
import { words } from '@/words/en'
import { newVersion } from '@/worker/register'
import { chair, images, noWork, screenAt, supervision } from './routes'

/** Screens that show work, or take something in: they would lack what waits, or lose it. */
const OF_WORK = /^\/(?:share|cases\/(?:new$|(?<id>[^/?]+)))/

/** Where a case is worked: there an emergency may have to be told at any moment. */
const AT_CHAIR = /^\/cases\/([^/?]+)\/(?:chair|sign-off)\b/

/** The screen of the present address, behind sign-in and the first notice. */
export function App() {
  if (sessionState.value === 'asking') return <OtherTab or={<output class="unseen">{words.loading}</output>} />
  // Who joins need not be signed in yet, nor have read anything.
  if (address.value.split('?')[0] === '/join')
    return (
      <>
        <OtherTab />
        {screenAt('/join')}
      </>
    )
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
      {supervises && <ToldOfEmergencies />}
      <div class="under" inert={expired} key={personId()}>
        {here()}
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

/** What shows the present address: the screen, or what keeps it from being shown. */
function here(): preact.JSX.Element {
  const first = membership.value?.role === 'student' ? '/cases' : '/worklist'
  const wanted = address.value.split('?')[0] === '/' ? first : address.value
  const work = cannotRead.value && OF_WORK.exec(wanted)
  return work ? noWork(work.groups?.id) : screenAt(wanted)
}

// Each comes with the screens that it stands over; until then there is nothing that it could say.

function ToldOfEmergencies() {
  const ToldToSupervisors = supervision.get()?.ToldToSupervisors
  return ToldToSupervisors ? <ToldToSupervisors key={`told ${personId()}`} /> : null
}

function LooksFirst({ caseId }: { caseId: string }) {
  const Looks = images.get()?.LooksFirst
  return Looks ? <Looks caseId={caseId} /> : null
}

function EmergencyDoor({ caseId }: { caseId: string }) {
  const Door = chair.get()?.EmergencyDoor
  return Door ? <Door caseId={caseId} /> : null
}
