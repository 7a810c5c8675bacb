import { signal } from '@preact/signals'

const NAME = 'fourth-canal-notice-read'

/** Read before the first frame, hence not from the database. */
export const noticeRead = signal(globalThis.localStorage?.getItem(NAME) === 'yes')

export function readNotice(): void {
  noticeRead.value = true
  localStorage.setItem(NAME, 'yes')
}
