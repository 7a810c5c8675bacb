/** Words on what waits on a phone, and what the server would not take. */
export const leftOver = {
  leftOver: {
    title: 'Not sent yet',
    waits: (n: number, since: string) => `${n === 1 ? '1 entry' : `${n} entries`}, since ${since}`,
    notListed: 'A case that is not on this list',
    refused: (says: string) => `The server would not take an entry, and what was done after it waits: ${says}`,
    save: 'Save a copy of it',
    saveNow: 'Save or share',
    saveSays:
      'A file with your entries that the server has not taken, as they would be sent. They stay on this phone as well.',
    setAside: 'Set it aside',
    setAsideTitle: 'Set this entry aside?',
    setAsideSays:
      'It does not count any more. It stays on this phone, and a note in the record says what was set aside and why. What was done after it is sent.',
    setAsideNow: 'Set it aside, with a note',
    aStep: 'a step',
    note: (what: string, at: string, why: string) =>
      `Set aside on the phone by whoever did it: ${what}, done ${at.slice(0, 16).replace('T', ' ')} UTC. The server had said: ${why}`,
  },
} as const
