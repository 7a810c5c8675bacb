/** Every word the reader sees; each screen brings along what it says. */
export * as words from './all'
