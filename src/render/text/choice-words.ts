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
  arrange: {
    title: (name: string) => `The blocks of ${name} turned`,
    way: "Blocks",
    cost: "Price",
    pieces: "Pieces",
    sizes: "Sizes to cut",
    impossible: (way: string, why: string) => `${way}: not this way. ${why}`,
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
