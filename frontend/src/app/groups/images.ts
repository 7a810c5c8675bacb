export { LooksFirst } from '@/panels/images/look-first'
export { Compare } from '@/screens/marks/compare'
export { MarksScreen } from '@/screens/marks/marks'
export { Share } from '@/screens/share/share'
