import { mm } from '@/units/millimetres'
import { lengthState, method } from './rationale'

export const review = {
  plan: 'Plan',
  title: (iso: string, number: number) => `Tooth ${iso} · plan ${number}`,
  under: (technique: string, setting: string | undefined, against: number | undefined) =>
    [technique, setting?.toLowerCase(), against === undefined ? '' : `against plan ${against}`]
      .filter(Boolean)
      .join(', '),
  facts: (size: string, end_mm: number | null, state: string, methods: readonly string[]) =>
    `${size}${end_mm === null ? '' : ` to ${mm(end_mm)}`}, length ${lengthState(state)}${
      methods.length ? `, rests on ${methods.map(method).join(' and ')}` : ''
    }`,
  by: (student: string) => `by ${student}`,
  stale: 'The case has changed since this plan was made. It cannot be approved; the student plans again.',
  superseded: 'Another version stands in place of this one.',
  replaced: 'replaced',
  remark: (canal: string) => `Remark on ${canal}`,
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
  first: (where: readonly string[]) => `Tick first: ${where.join(', ')}`,
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
