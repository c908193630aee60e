import type { FoldersFacts, InTheWay } from "../../../diagnostics/folders.ts";
import { visible } from "../../../diagnostics/quote.ts";
import type { WordsOf } from "../../diagnostics.ts";

const WHY: Readonly<Record<InTheWay, string>> = {
  unknown: "not written by this program",
  changed: "changed since this program wrote it",
  input: "it is what this command reads",
  "no-file": "a folder or a link, not a plain file",
};

function named(names: readonly string[]): string {
  const all = names.map(visible);
  const last = all.pop() ?? "";
  return all.length === 0 ? last : `${all.join(", ")} and ${last}`;
}

export const folders: WordsOf<FoldersFacts> = {
  folderInTheWay: ({ folder, obstacles, takesOut }) => {
    const list = obstacles.map(({ name, why }) => `\n  ${visible(name)} (${WHY[why]})`).join("");
    const firm = obstacles.filter(({ why }) => why === "input" || why === "no-file").map(({ name }) => name);
    const them = obstacles.length === 1 ? "it" : "them";
    const move = `Move or rename ${them}${takesOut ? ", or name another folder with --out" : ""}`;
    const replace =
      firm.length === 0
        ? `${move}; with --replace ${them === "it" ? "it is" : "they are"} written over.`
        : `${move}. --replace does not write over ${named(firm)}.`;
    return {
      message: `Nothing was written into ${folder}, as this would be lost there:${list}`,
      hint: replace,
    };
  },

  folderFileHeld: ({ folder, file, takesOut }) => ({
    message: `Nothing was written into ${folder}: ${visible(file)} cannot be replaced. Another program holds it open, or you may not change it.`,
    hint: `Close it there (a viewer, an editor) and run the command again${takesOut ? ", or name another folder with --out" : ""}.`,
  }),

  folderChangedMeanwhile: ({ folder, file }) => ({
    message: `Nothing was written into ${folder}: ${visible(file)} was changed while this was about to be written.`,
    hint: "Run the command again when nothing else writes there.",
  }),

  folderBusy: ({ folder, lock }) => ({
    message: `Nothing was written into ${folder}: another run of this program is writing there.`,
    hint: `Try again in a moment. If no other run is going on, remove ${lock}.`,
  }),

  folderHalfWritten: ({ folder, kept, mayMend }) => {
    const hint = mayMend
      ? "Close other programs that use the folder and run the command again, which first puts it back."
      : "Its journal there is damaged, so this is for you to do: take what you need from its files, then remove it.";
    return {
      message: `${folder} is incomplete: writing into it was stopped halfway, and what stood there before could not be put back. Do not cut by it.`,
      hint: `Nothing is lost; what stood there is in ${kept}. ${hint}`,
    };
  },

  folderMended: ({ folder }) => ({
    message: `An earlier run was stopped while it wrote into ${folder}. What stood there before it is back in place.`,
    hint: "",
  }),

  folderKeptBoth: ({ folder, file, beside }) => ({
    message: `${visible(file)} in ${folder} was changed after an earlier run was stopped, so it was left. What stood there before that run is now ${visible(beside)}.`,
    hint: "Keep the one you want.",
  }),

  folderOldLeft: ({ folder, files }) => {
    const [is, it] = files.length === 1 ? ["is", "it"] : ["are", "them"];
    return {
      message: `${named(files)} in ${folder} ${is} of an earlier plan. You changed ${it}, so ${it === "it" ? "it was" : "they were"} left.`,
      hint: `Move ${it} elsewhere, so that nobody cuts by ${it}.`,
    };
  },
};
