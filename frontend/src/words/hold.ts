/** Words at hold points, and of what a supervisor's decision leaves out. */
export const hold = {
  hold: {
    returned: (remark: string) => `The supervisor returned this canal: ${remark}`,
    partnerReturned: (canal: string) => `Ends in one with ${canal}, which the supervisor returned: both wait.`,
  },
} as const
