/** Two names of a fabric are the same when they differ in capitals, spaces or the way accents are stored only. */
export function fabricKey(name: string): string {
  return name.normalize("NFC").trim().toLowerCase().replace(/\s+/g, " ");
}
