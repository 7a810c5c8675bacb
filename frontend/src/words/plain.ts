/** A key as a reader sees it: `glide-path` is Glide path. */
export function plainKey(key: string): string {
  return capital(key.replace(/[-_]/g, ' '))
}

/** As it stands at the beginning of a line. */
export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1)
}
