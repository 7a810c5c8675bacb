import { render } from 'preact'
import '@/look/tokens.css'
import '@/look/type.css'
import '@/look/base.css'
import '@/look/fields.css'
import { address, startRouter } from '@/router'
import { followScheme } from '@/store/device/preferences'
import { startSpace } from '@/store/device/storage'
import { startImages } from '@/store/images/images'
import { startMarkings } from '@/store/images/markings'
import { startEmergencies } from '@/store/outbox/emergencies'
import { startSending } from '@/store/outbox/sender'
import { startComparing } from '@/store/outbox/set-back'
import { findSession } from '@/store/session/session'
import { registerWorker } from '@/worker/register'
import { App } from './app'
import { loadAhead } from './routes'

const root = document.getElementById('app')
if (!root) throw new Error('the page has no place for the app')

followScheme()
startRouter()
loadAhead(address.value)
startEmergencies()
void findSession().then(startSending).then(startComparing).then(startImages).then(startMarkings)
startSpace()
root.replaceChildren()
render(<App />, root)
void registerWorker()
