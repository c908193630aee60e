import { writeSync } from "node:fs";
import { styleText } from "node:util";
import type { Words } from "../words/index.ts";

/** The part of `node:util` styles this program uses. */
type Style = "bold" | "dim" | "red" | "yellow" | "green" | "cyan";

/** The world a command talks to. Handed in, so that a command can be run inside a test. */
export interface Io {
  /** The result: a table, a file, JSON. */
  out(text: string): void;
  /** All other talk. */
  talk(text: string): void;
  /** Colour for `talk`; the text unchanged where colour is not wanted. */
  onTalk(style: Style, text: string): string;
  /** Whether a line on the terminal may be rewritten to show progress. */
  showsProgress: boolean;
  /** Standard input, as chunks of bytes. */
  stdin(): AsyncIterable<Uint8Array>;
  /** The language everything is told in: as asked, else that of the file once it is read, else the system's. */
  words: Words;
  /** It was asked for on the command line: what the file says of it is of no account. */
  languageAsked?: boolean;
  /** Folder that relative names start from. */
  folder: string;
}

type Stream = NodeJS.WriteStream & { isTTY?: boolean };

function wantsColour(stream: Stream): boolean {
  const { NO_COLOR, TERM } = process.env;
  return stream.isTTY === true && (NO_COLOR === undefined || NO_COLOR === "") && TERM !== "dumb";
}

/** What was printed did not get where it was sent. */
function tellUnwritten(code: string, words: Words): void {
  try {
    writeSync(2, words.commandLine.unwritten.output(code));
  } catch {
    // Nobody is left to tell.
  }
}

/** The process's own streams. A reader that closes early (`| head`) ends the program quietly. */
export function processIo(words: Words): Io {
  for (const stream of [process.stdout, process.stderr]) {
    stream.on("error", (error: NodeJS.ErrnoException) => {
      if (error.code === "EPIPE") process.exit(0);
      if (stream === process.stdout) tellUnwritten(error.code ?? error.message, words);
      process.exit(70);
    });
  }
  const coloured = wantsColour(process.stderr);
  return {
    out: (text) => void process.stdout.write(text),
    talk: (text) => void process.stderr.write(text),
    onTalk: (style, text) => (coloured ? styleText(style, text, { stream: process.stderr }) : text),
    showsProgress: process.stderr.isTTY === true && process.env.TERM !== "dumb",
    stdin: () => process.stdin,
    words,
    folder: process.cwd(),
  };
}
