export const stash = {
  theTableOfYour: "the table of your cloth (CSV)",
  howManyToAdd: "how many to add",
  aNoteKeptWith: "a note kept with what is added",
  howManyChangesTo: "how many changes to take back",
  measureOfNumbersWritten: "measure of numbers written without one",
  addedTo: (file: string, value: string) => `Added to ${file}:
${value}\n`,
  nothing: (title: string) => `${title}: nothing`,
  takenOutOf: (file: string) => `Taken out of ${file}`,
  offcutsPutIn: "Offcuts put in",
  theTableAsIt: (file: string) => `The table as it was before is ${file}.bak\n`,
  errorStepsIsA: (wanted: number) => `error: --steps is a whole number, for example 2; it is ${wanted}\n`,
  change: (count: number, value: string) => `${count} change${value}`,
  ofTakenBackBefore: (changes: string, file: string, changes2: string) =>
    `${changes} of ${file} taken back; ${changes2} before it could be too.\n`,
  theTableAsIt2: (file: string) => `The table as it was until now is ${file}.undone\n`,
  theClothInYour: "the cloth in your drawer: show it, add to it, take out what a plan uses",
  keepsATableThat:
    "Keeps a table that a spreadsheet opens too: fabric, width, length, how many, note. Sizes are the usable ones, width across the fabric, length along the selvage. `show` lists it; `add FABRIC SIZE` adds cloth; `take PLAN` takes out what a plan made with --stash uses and puts in the offcuts worth keeping; `suits FILE` tells which fabrics of a quilt the drawer covers; `undo` takes back the last change of add or take, up to nine of them. The table is changed whole or not at all, and the one before is kept beside it as .bak.",
  forAddFabricAnd:
    'for add: fabric and size, "21 x 18 in", "fat quarter", "1/2 yd" or "WOF x 20 in"; for take: plan.json',
  errorStashHasNo: (action: string, value: string) =>
    `error: stash has no action "${action}". Use one of: ${value}.\n`,
  noMoreWords: "no more words",
  errorStashTakesSee: (action: string, wanted: string) =>
    `error: stash ${action} takes ${wanted}. See: crossgrain stash --help\n`,
  /** Command lines to copy, without the program's name. */
  examples: [
    'stash add "Night sea" "21 x 18 in" --count 3 --note "blue drawer"',
    'stash add "Chalk" "1/2 yd"',
    "stash show",
    "new cut-list > my-cuts.yaml",
    "stash suits my-cuts.yaml",
    "plan my-cuts.yaml --stash stash.csv --out mine",
    "stash take mine/plan.json",
    "stash undo",
  ],
};
