/** Words of readings that were mistakes. */
export const struck = {
  struck: {
    title: 'Readings that were struck',
    strike: 'Strike',
    ask: 'Why? It stays in the record and counts for nothing; the canal is planned again.',
    keep: 'Leave it',
    why: {
      wrong_canal: 'It is of another canal',
      mistyped: 'It was mistyped',
      not_so: 'It was not measured so',
    },
    by: (who: string, at: string, why: string) => `Struck by ${who}, ${at}: ${why.toLowerCase()}.`,
  },
} as const
