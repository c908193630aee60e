import type { FileKey } from "../diagnostics/file-keys.ts";

type Written = string | number | boolean;

/** What a key of the file means, and how it is written. */
export interface KeyWord {
  /** Of the kind of file alone. */
  title?: string;
  /** In a few words without a full stop. Of a part of the pattern: a function of its key. */
  says: string | ((of: string) => string);
  /** As it stands in a file; apart by measure where numbers are lengths. None where nothing short can be shown. */
  example?: Written | { inches: Written; metric: Written };
}

export type KeyWords<Key extends FileKey> = Readonly<Record<Key, KeyWord>>;

export type FileKeyWords = KeyWords<FileKey>;

/** The example of a key, in inches or centimetres where they differ. */
export function exampleOfKey({ example }: KeyWord, inches: boolean): Written | undefined {
  return typeof example === "object" ? (inches ? example.inches : example.metric) : example;
}

/** What a key means; `of` names the part of the pattern it belongs to. */
export function meaningOfKey({ says }: KeyWord, of = ""): string {
  return typeof says === "string" ? says : says(of);
}

/** What the schema of a file says of a key, in the words of a language. */
export function sayKey(keys: FileKeyWords) {
  return ({ about, inches, of }: { about: FileKey; inches: boolean; of?: string }) => {
    const word = keys[about];
    const example = exampleOfKey(word, inches);
    return {
      ...(word.title === undefined ? {} : { title: word.title }),
      description: meaningOfKey(word, of),
      ...(example === undefined ? {} : { examples: [example] }),
    };
  };
}
