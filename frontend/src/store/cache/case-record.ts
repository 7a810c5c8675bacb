import * as calls from '@/api/calls'
import { useCached } from './hooks'

/** The record of a case as the server last gave it, kept on the phone. */
export function useRecord(caseId: string) {
  return useCached(`record ${caseId}`, () => calls.getRecord(caseId))
}
