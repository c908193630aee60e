const WHY: Readonly<Record<string, string>> = {
  ENOSPC: "the disk is full",
  EIO: "the disk does not answer",
  EDQUOT: "your share of the disk is full",
};

/** What is told where nothing could be done: the output was not taken, or the program itself went wrong. */
export const unwritten = {
  output: (systemCode: string) =>
    `error: the output could not be written: ${WHY[systemCode] ?? "the system says"} (${systemCode}). What is there of it is not whole.\n`,
  fault: "fault",
  ourFault: (what: string) => `Crossgrain itself went wrong, not your file: ${what}\n`,
  report: "Nothing was written. Please report this line together with the file and the command.\n",
};
