import type { FabricPlan, Plan } from "../plan/types.ts";

/** What is said to be done already: so many of each bag as it may hold, cloth that is there, and who said it. */
export function checkDone({ name, pieces, stock = [], done }: FabricPlan, { fabrics, said }: Plan): string[] {
  const faults: string[] = [];
  if (done === undefined)
    return said?.some(({ fabric }) => fabric === name) ? ["work is told of, and none is done"] : [];
  if (said === undefined || said.length === 0) faults.push("something is done that nobody has told of");
  for (const { fabric } of said ?? [])
    if (!fabrics.some((each) => each.name === fabric))
      faults.push(`work is told of ${fabric}, which is not here`);
  if (done.cut.length !== pieces.length)
    faults.push(`${done.cut.length} bags are told of, there are ${pieces.length}`);
  pieces.forEach(({ letter, count }, i) => {
    const cut = done.cut[i] ?? 0;
    if (!Number.isSafeInteger(cut) || cut < 0 || cut > count)
      faults.push(`${cut} of ${count} ${letter} lie cut`);
  });
  const names = [...stock, ...done.kept].map((kind) => kind.name);
  if (new Set(names).size < names.length) faults.push("cloth in hand and cloth put by have one name");
  for (const kind of done.kept) {
    const sizes = [kind.across, kind.along, kind.available];
    if (!sizes.every((size) => Number.isSafeInteger(size) && size > 0))
      faults.push(`${kind.available} of ${kind.name} are no cloth`);
    if (kind.used !== 0) faults.push(`${kind.name} is put by and cut`);
    if (kind.from === "shop") faults.push(`${kind.name} is put by and not bought yet`);
  }
  return faults;
}
