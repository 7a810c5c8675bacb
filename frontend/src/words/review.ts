export const review = {
  plan: 'Plan',
  title: (iso: string, number: number) => `Tooth ${iso} · plan ${number}`,
  under: (student: string, technique: string, setting: string | undefined, against: number | undefined) =>
    [student, technique, setting?.toLowerCase(), against === undefined ? '' : `against plan ${against}`]
      .filter(Boolean)
      .join(', '),
  decide: 'Decide on each canal',
  verdict: (canal: string, verdict: 'open' | 'agreed' | 'change') =>
    `${canal}: ${{ open: 'open', agreed: 'agreed', change: 'to be changed' }[verdict]}`,
  how: 'Touch a canal: agreed. Again: to be changed.',
  undecided: (canals: readonly string[]) => `Decide on ${canals.join(', ')}.`,
  lacks: (canals: readonly string[], where: readonly string[]) =>
    [canals.length > 0 && `open: ${canals.join(', ')}`, where.length > 0 && `to tick: ${where.join(', ')}`]
      .filter(Boolean)
      .join(' · '),
  answered: (canal: string, moves: boolean) => `${canal}: ${moves ? 'answered, see what changed' : 'nothing changed'}`,
  next: (student: string, tooth: string, number: number) => `Next: ${student}, tooth ${tooth}, plan ${number}`,
  stale: 'The case has changed since this plan was made. It cannot be approved; the student plans again.',
  superseded: 'Another version stands in place of this one.',
  replaced: 'replaced',
  remark: (canal: string) => `Remark on ${canal}`,
  compare: (canal: string) => `Compare a length of your own in ${canal}`,
  ownLength: (canal: string) => `Your working length of ${canal}, mm`,
  compared: (plan: string, own: string, by: string, over: number) =>
    `Plan ${plan}, yours ${own}: ${Number(by) === 0 ? 'the same' : `${by} mm ${over > 0 ? 'longer' : 'shorter'}`}.`,
  measured: (who: string, own: string, canal: string) => `${who} measured ${own} mm in ${canal}.`,
  earlier: (student: string) => `Other cases of ${student}`,
  noOthers: 'No other cases.',
  note: 'Note on the whole plan',
  return: 'Return',
  approve: (number: number) => `Approve plan ${number}`,
  busy: 'Sending …',
  saySomething: 'Say what to change: a remark on a canal, or a note.',
  unchanged: 'unchanged',
  nothing: (number: number) => `Nothing changed since plan ${number}.`,
  came: 'Not in the version before.',
  went: 'No longer in the plan.',
  cautionCame: 'New:',
  cautionWent: 'Gone:',
  progress: (n: number) => `How far the work had come: ${n} ${n === 1 ? 'thing' : 'things'}`,
  value: (text: string | null, unit: string) =>
    text === null ? 'none' : `${text.replace(/_/g, ' ')}${unit === '°' ? unit : unit && `\u00a0${unit}`}`,
}

export const acknowledge = {
  title: 'Must be put right: tick each you have seen',
  tooth: 'Whole tooth',
  missing: (where: readonly string[]) => `Tick each that must be put right before you approve: ${where.join(', ')}.`,
  answers: 'What was said last',
}

export const revoke = {
  open: 'Withdraw the approval',
  reason: 'Why is the approval withdrawn?',
  hint: 'The student reads it at the chair at once. Work halts at the next step until a plan is approved again.',
  go: 'Withdraw it now',
  keep: 'Let it stand',
  was: (name: string, when: string) => `Approval withdrawn by ${name}, ${when}`,
}

export const override = {
  open: 'Let the work go on',
  openWide: 'Choose the final size',
  reason: 'Why the work may go on',
  hint: 'It stands with this caution in the plan and in the record.',
  go: 'Let it pass, with this reason',
  keep: 'Not now',
  by: (name: string, at: string) => `Let pass by ${name}, ${at}.`,
  size: (size: number) => `Final size ${size}.`,
  next: 'This plan was made before that: the student makes it again, and what is withheld opens.',
  back: 'Take it back',
}
