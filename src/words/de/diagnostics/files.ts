import type { FilesFacts } from "../../../diagnostics/files.ts";
import type { WordsOf } from "../../diagnostics.ts";
import { either, figure } from "../language.ts";

const NO_RIGHT_TO_READ = "sie darf nicht gelesen werden";
const NO_RIGHT_TO_WRITE = "dort darf nicht geschrieben werden";

/** Why a file could not be read, by the system's own error code. */
const WHY_UNREADABLE: Readonly<Record<string, string>> = {
  ENOENT: "es gibt keine solche Datei",
  ENOTDIR: "ein Teil des Pfads ist eine Datei, kein Ordner",
  EISDIR: "es ist ein Ordner",
  EACCES: NO_RIGHT_TO_READ,
  EPERM: NO_RIGHT_TO_READ,
};

const WHY_NOT_WRITABLE: Readonly<Record<string, string>> = {
  EACCES: NO_RIGHT_TO_WRITE,
  EPERM: NO_RIGHT_TO_WRITE,
  EROFS: "der Datenträger ist schreibgeschützt",
  ENOSPC: "der Datenträger ist voll",
  EDQUOT: "der eigene Anteil am Datenträger ist voll",
  ENOENT: "das System erlaubt keinen Ordner dieses Namens, oder er wurde inzwischen entfernt",
  EINVAL: "das System erlaubt keinen Ordner dieses Namens",
  ENAMETOOLONG: "ein Name ist zu lang für das System",
  ENOTDIR: "ein Teil des Pfads ist eine Datei, kein Ordner",
  EEXIST: "es gibt schon eine Datei dieses Namens",
};

export const files: WordsOf<FilesFacts> = {
  fileUnreadable: ({ file, systemCode, near }) => {
    const why = WHY_UNREADABLE[systemCode] ?? `das System meldet ${systemCode}`;
    const hint =
      near.length > 0
        ? `Ist ${either(near)} gemeint?`
        : "Namen und Ordner prüfen. Eine Datei namens - wird von der Standardeingabe gelesen.";
    return { message: `${file} kann nicht gelesen werden: ${why}.`, hint };
  },

  fileTooLarge: ({ file, most }) => ({
    message: `${file} ist zu groß für eine Zuschnittliste: mehr als ${figure(most / 1_000_000)} MB.`,
    hint: "Ist es die richtige Datei? Eine Zuschnittliste ist ein kurzer Text; gleiche Maße kommen in eine Zeile mit einer Anzahl.",
  }),

  fileNotText: ({ file }) => ({
    message: `${file} ist keine Textdatei in UTF-8.`,
    hint: "Die Zuschnittliste in einem einfachen Texteditor schreiben (keiner Textverarbeitung, keiner Tabellenkalkulation) und als UTF-8 speichern.",
  }),

  folderNotWritable: ({ folder, systemCode }) => ({
    message: `Nichts wurde geschrieben: In ${folder} kann nicht geschrieben werden (${WHY_NOT_WRITABLE[systemCode] ?? `das System meldet ${systemCode}`}).`,
    hint: "Einen anderen Ordner nennen, zum Beispiel --out ~/quilts/mein-plan.",
  }),
};
