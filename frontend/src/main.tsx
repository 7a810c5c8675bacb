import { render } from 'preact'
import '@/look/tokens.css'
import '@/look/type.css'
import '@/look/base.css'
import '@/look/fields.css'
import { App } from './app'
import { startRouter } from './router'
import { startEmergencies } from './store/emergencies'
import { startImages } from './store/images'
import { startMarkings } from './store/markings'
import { followScheme } from './store/scheme'
import { startSending } from './store/sender'
import { findSession } from './store/session'
import { startComparing } from './store/set-back'
import { startSpace } from './store/space'
import { registerWorker } from './worker/register'

const root = document.getElementById('app')
if (!root) throw new Error('the page has no place for the app')

followScheme()
startRouter()
startEmergencies()
void findSession().then(startSending).then(startComparing).then(startImages).then(startMarkings)
startSpace()
root.replaceChildren()
render(<App />, root)
void registerWorker()
