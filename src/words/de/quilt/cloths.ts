/** Kinds of cloth in fixed sizes, by the words that their names are made of. */
const KINDS: Readonly<Record<string, string>> = {
  bolt: "Ballen",
  "fat quarter": "Fat Quarter",
  "fat eighth": "Fat Eighth",
  square: "Quadrat",
  strip: "Streifen",
  piece: "Stück",
  rest: "Rest",
};

const FROM: Readonly<Record<string, string>> = { bought: "gekauft", stash: "aus dem Vorrat" };

/** What a cloth is called that the plan names by its kind, as `10 in square`; a maker's own name as it stands. */
export function clothName(name: string): string {
  const [, from = "", before = "", kind = "", after = ""] =
    /^(?:(bought|stash) )?(?:([\d ./-]+ (?:in|cm|mm)) )?(bolt|fat quarter|fat eighth|square|strip|piece|rest)(?: (.+))?$/.exec(
      name,
    ) ?? [];
  const german = KINDS[kind];
  if (german === undefined) return name;
  const size = [before, after]
    .filter((part) => part !== "")
    .join(" ")
    .replace(/ in$/, " Zoll");
  return [german, size, ...(FROM[from] === undefined ? [] : [`(${FROM[from]})`])]
    .filter((part) => part !== "")
    .join(" ");
}
