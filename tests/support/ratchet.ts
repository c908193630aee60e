/** What is counted by file or folder has more, or fewer, than the list says. */
export function differing(
  now: Readonly<Record<string, number>>,
  before: Readonly<Record<string, number>>,
  more: boolean,
): string[] {
  return [...new Set([...Object.keys(now), ...Object.keys(before)])]
    .filter((key) => (more ? 1 : -1) * ((now[key] ?? 0) - (before[key] ?? 0)) > 0)
    .map((key) => `${key}: ${now[key] ?? 0}, listed ${before[key] ?? 0}`)
    .sort();
}
