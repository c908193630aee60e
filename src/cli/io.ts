import { styleText } from "node:util";

/** The part of `node:util` styles this program uses. */
export type Style = "bold" | "dim" | "red" | "yellow" | "green" | "cyan";

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
  /** Folder that relative names start from. */
  folder: string;
}

type Stream = NodeJS.WriteStream & { isTTY?: boolean };

function wantsColour(stream: Stream): boolean {
  const { NO_COLOR, TERM } = process.env;
  return stream.isTTY === true && (NO_COLOR === undefined || NO_COLOR === "") && TERM !== "dumb";
}

/** The process's own streams. A reader that closes early (`| head`) ends the program quietly. */
export function processIo(): Io {
  for (const stream of [process.stdout, process.stderr]) {
    stream.on("error", (error: NodeJS.ErrnoException) => {
      process.exit(error.code === "EPIPE" ? 0 : 70);
    });
  }
  const coloured = wantsColour(process.stderr);
  return {
    out: (text) => void process.stdout.write(text),
    talk: (text) => void process.stderr.write(text),
    onTalk: (style, text) => (coloured ? styleText(style, text, { stream: process.stderr }) : text),
    showsProgress: process.stderr.isTTY === true && process.env.TERM !== "dumb",
    stdin: () => process.stdin,
    folder: process.cwd(),
  };
}
