/** Whose an address is: the rest of it may be a secret, and is nothing to read. */
export const hostOf = (address: string) => (URL.canParse(address) ? new URL(address).host : address)
