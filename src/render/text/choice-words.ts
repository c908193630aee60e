/** The words of the tables that set choices side by side. Sizes and amounts arrive already printed. */
export const choiceWords = {
  fullWidth: "WOF",
  kits: {
    title: (name: string, kits: number) => `${kits} kits of ${name}`,
    columns: {
      fabric: "Fabric",
      together: "Buy, cut together",
      one: "One kit alone",
      costTogether: "Price together",
      costSeparate: "Price apart",
    },
    separate: (kits: number) => `${kits} bought apart`,
    saved: (amount: string) => `Cutting together saves ${amount}.`,
    bag: (kits: number) => `Into each of the ${kits} bags:`,
    none: "nothing",
  },
  sources: {
    stash: "From the stash",
    fatQuarters: "Fat quarters to buy",
    total: "together",
    pieces: (count: number) => `${count} ${count === 1 ? "piece" : "pieces"}`,
    take: (stash: string) => `When it is cut: crossgrain stash take PLAN.json --stash ${stash}`,
  },
  compare: {
    title: (name: string) => `Ways of making ${name}`,
    about:
      "Each line is a plan of the whole quilt with one kind of unit made that way, the rest as the file says.",
    filed: "as the file says",
    mark: "*",
    unproven: "~",
    notProven: "~ the least found in the time; less is not ruled out (--budget allows more)",
    marked: "* the way the file has it",
    columns: {
      way: "Way",
      cost: "Price",
      strips: "Strips",
      subcuts: "Subcuts",
      seams: "Seams",
      length: "Sewn",
      bias: "Bias seams",
      trims: "Trims",
      corners: "Corners",
      bonus: "Bonus units",
      time: "Time",
    },
    impossible: (way: string, why: string) => `${way}: not this way. ${why}`,
    best: (all: boolean, tried: number, of: number) =>
      all
        ? `The best of all ${of} combinations, each planned:`
        : `The best of ${tried} combinations planned, of ${of}:`,
    spares: "(makes spare units, to keep the print's direction)",
    hours: (minutes: number) => `${Math.floor(minutes / 60)} h ${String(minutes % 60).padStart(2, "0")}`,
    figures: (said: string) =>
      `Seams, sewn length, trims and corners are those of the units. Time is an estimate from these minutes: ${said}.`,
    change: "Change them to your own: --minutes strip=1,seam=0.5",
  },
  arrange: {
    title: (name: string) => `The blocks of ${name} turned`,
    way: "Blocks",
    cost: "Price",
    pieces: "Pieces",
    sizes: "Sizes to cut",
    alike: "Turning the blocks changes nothing that is bought or cut: choose by eye.",
  },
  sizes: {
    title: (name: string) => `Fabric to buy for ${name}, by size`,
    fabric: "Fabric",
    finished: "finished size",
    blocks: (across: number, down: number) => `${across} x ${down} blocks`,
  },
  suits: {
    title: (name: string) => `What the drawer covers of ${name}`,
    covers: { all: "all of it", partly: "part of it", nothing: "nothing" },
  },
} as const;
