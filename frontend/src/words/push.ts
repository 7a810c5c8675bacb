/** Words of notifications, on the account screen and in the notification itself. */
export const push = {
  title: 'Notifications',
  says: 'An emergency, a sign-off that is asked for and a canal that comes to a hold point can be told on this device, also while the app is closed.',
  on: 'On, on this device.',
  off: 'Off, on this device.',
  allow: 'Notify me on this device',
  stop: 'Stop on this device',
  unsupported:
    'This browser cannot be notified here. Some phones can once the app is on the home screen; it needs HTTPS. The list shows everything all the same.',
  denied:
    'Notifications of this app are forbidden on this device. Allow them in the browser’s settings, then come back.',
  unreachable: 'The browser’s push service could not be reached. The list shows everything all the same.',
  news: {
    emergency: (tooth: string) => `Emergency: tooth ${tooth}`,
    corrected: (tooth: string, by: string) => `Tooth ${tooth}, emergency corrected by ${by}`,
    notSo: (tooth: string, by: string) => `Tooth ${tooth}: it was not so, says ${by}`,
    asked: (tooth: string, canal: string) => `${tooth} ${canal}: your sign-off is asked for`,
    hold_point: (tooth: string, canal: string) => `${tooth} ${canal} has come to a hold point`,
    other: 'Something waits for you',
  },
  open: 'Open Fourth Canal.',
}
