/** The colours of the book on screen, by day and by night. Print is always by day. */
export const DAY = {
  ground: "#f7f5f0",
  sheet: "#ffffff",
  ink: "#1d2733",
  quiet: "#55606c",
  line: "#c9c4b8",
  accent: "#0b5a5e",
  wash: "#eaf1ef",
  alarm: "#8a3b12",
  alarmWash: "#fbf1e8",
} as const;

export const NIGHT: Readonly<Record<keyof typeof DAY, string>> = {
  ground: "#12171d",
  sheet: "#1b222a",
  ink: "#e9ecef",
  quiet: "#aab4be",
  line: "#46505b",
  accent: "#7fd0c8",
  wash: "#20302f",
  alarm: "#f2b48c",
  alarmWash: "#33261d",
};
