/** Words of the other systems that a programme works with. */
export const systems = {
  webhooks: 'Told of changes',
  webhooksSay: 'A webhook tells another system of every change, at an address of its own.',
  clients: 'Programs that sign in by OAuth',
  clientsSay: 'A client acts for people who allow it, or for itself as a service of the programme.',
  platforms: 'Courses that lead here',
  platformsSay: 'A platform signs its students in for an assignment, and is told their grades.',
  none: 'None yet. They are added over the API.',
  state: { active: 'Active', paused: 'Paused', given_up: 'Given up' },
  waiting: (count: number) =>
    count === 0 ? 'nothing waits' : count === 1 ? '1 message waits' : `${count} messages wait`,
  failing: (since: string) => `nothing taken since ${since}`,
  pause: (host: string) => `Pause ${host}`,
  goOn: (host: string) => `Go on with ${host}`,
  actsFor: { itself: 'acts for itself', people: 'acts for people who allow it' },
  on: 'On',
  off: 'Switched off',
  grades: (count: number) => (count === 1 ? '1 grade waits' : `${count} grades wait`),
  switchOn: (name: string) => `Switch ${name} on`,
  switchOff: (name: string) => `Switch ${name} off`,
  leave: 'Leave it',
}
