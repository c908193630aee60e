/** The code of a fault of the system, such as `ENOENT`; undefined for a fault that has none, which is ours. */
export function systemCode(error: unknown): string | undefined {
  if (!(error instanceof Error) || !("code" in error)) return undefined;
  return typeof error.code === "string" ? error.code : undefined;
}
