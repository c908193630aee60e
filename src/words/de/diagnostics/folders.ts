import type { FoldersFacts, InTheWay } from "../../../diagnostics/folders.ts";
import { visible } from "../../../diagnostics/quote.ts";
import type { WordsOf } from "../../diagnostics.ts";
import { list, plural } from "../language.ts";

const WHY: Readonly<Record<InTheWay, string>> = {
  unknown: "nicht von diesem Programm geschrieben",
  changed: "geändert, seit dieses Programm sie schrieb",
  input: "wird von diesem Befehl gelesen",
  "no-file": "ein Ordner oder eine Verknüpfung, keine einfache Datei",
};

const named = (names: readonly string[]): string => list(names.map(visible));
const orElsewhere = (takesOut: boolean): string =>
  takesOut ? ", oder mit --out einen anderen Ordner nennen" : "";

export const folders: WordsOf<FoldersFacts> = {
  folderInTheWay: ({ folder, obstacles, takesOut }) => {
    const lines = obstacles.map(({ name, why }) => `\n  ${visible(name)} (${WHY[why]})`).join("");
    const firm = obstacles.filter(({ why }) => why === "input" || why === "no-file").map(({ name }) => name);
    const move = `${plural(obstacles.length, "Sie", "Sie alle")} verschieben oder umbenennen${orElsewhere(takesOut)}`;
    const hint =
      firm.length === 0
        ? `${move}; mit --replace ${plural(obstacles.length, "wird sie", "werden sie")} überschrieben.`
        : `${move}. --replace überschreibt nicht: ${named(firm)}.`;
    return { message: `In ${folder} wurde nichts geschrieben, weil dort dies verloren ginge:${lines}`, hint };
  },

  folderFileHeld: ({ folder, file, takesOut }) => ({
    message: `In ${folder} wurde nichts geschrieben: ${visible(file)} kann nicht ersetzt werden. Ein anderes Programm hält sie offen, oder sie darf nicht geändert werden.`,
    hint: `Sie dort schließen (Betrachter, Editor) und den Befehl noch einmal aufrufen${orElsewhere(takesOut)}.`,
  }),

  folderChangedMeanwhile: ({ folder, file }) => ({
    message: `In ${folder} wurde nichts geschrieben: ${visible(file)} wurde geändert, als gerade geschrieben werden sollte.`,
    hint: "Den Befehl noch einmal aufrufen, wenn dort nichts anderes schreibt.",
  }),

  folderBusy: ({ folder, lock }) => ({
    message: `In ${folder} wurde nichts geschrieben: Ein anderer Lauf dieses Programms schreibt gerade dort.`,
    hint: `Gleich noch einmal versuchen. Läuft kein anderer, ${lock} entfernen.`,
  }),

  folderHalfWritten: ({ folder, kept, mayMend }) => {
    const hint = mayMend
      ? "Andere Programme schließen, die den Ordner verwenden, und den Befehl noch einmal aufrufen; er stellt es zuerst wieder her."
      : "Das Protokoll dort ist beschädigt, das ist also von Hand zu tun: aus seinen Dateien nehmen, was gebraucht wird, dann entfernen.";
    return {
      message: `${folder} ist unvollständig: Das Schreiben wurde mittendrin angehalten, und was vorher dort war, ließ sich nicht zurückstellen. Nicht danach zuschneiden.`,
      hint: `Nichts ist verloren; was dort war, liegt in ${kept}. ${hint}`,
    };
  },

  folderMended: ({ folder }) => ({
    message: `Ein früherer Lauf wurde angehalten, während er in ${folder} schrieb. Was vorher dort war, ist wieder an seinem Platz.`,
    hint: "",
  }),

  folderKeptBoth: ({ folder, file, beside }) => ({
    message: `${visible(file)} in ${folder} wurde geändert, nachdem ein früherer Lauf angehalten worden war, und darum gelassen. Was vor jenem Lauf dort war, heißt jetzt ${visible(beside)}.`,
    hint: "Behalten, was gebraucht wird.",
  }),

  folderOldLeft: ({ folder, files }) => ({
    message: `${named(files)} in ${folder} ${plural(files.length, "gehört", "gehören")} zu einem früheren Plan. ${plural(files.length, "Sie wurde", "Sie wurden")} von Hand geändert und darum gelassen.`,
    hint: `${plural(files.length, "Sie", "Sie alle")} woanders hinlegen, damit niemand danach zuschneidet.`,
  }),
};
