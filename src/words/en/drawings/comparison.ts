/** All the words that stand in the picture of ways of making side by side. */
export const comparison = {
  title: (name: string) => `Ways of making ${name}`,
  legend:
    "The line across the bars is the quilt as the file has it; a dark bar with bold figures is less than that. Bars " +
    "of one kind have one scale in all panels. Each panel is a plan of the whole quilt with one kind of unit made " +
    "that way.",
  description: (panels: number) => `${panels} panels of bars side by side, one for each choice.`,
  whole: "whole quilt",
  filed: "as the file says",
  best: "the best together",
  unit: (unit: string, filed: readonly string[]) => `${unit} (file: ${filed.join(", ")})`,
  not: "Not this way.",
  price: "Price",
  cloth: "Fabric",
  time: "Time",
  cuts: "Cuts",
  seams: "Seams",
  bias: "Bias edges",
  area: (amount: string, inches: boolean) => `${amount} ${inches ? "sq yd" : "m²"}`,
  hours: (minutes: number) =>
    minutes < 60
      ? `${minutes} min`
      : `${Math.floor(minutes / 60)} h ${String(minutes % 60).padStart(2, "0")}`,
} as const;
