import type { Verb } from "./table.ts";

const quoted = (text: string) => `'${text.replace(/[\\']/g, "\\$&")}'`;

/** Completion for fish. */
export function fishCompletion(verbs: readonly Verb[]): string {
  const lines = verbs.flatMap(({ name, summary, flags, words }) => {
    const here = `complete -c crossgrain -n '__fish_seen_subcommand_from ${name}'`;
    return [
      `complete -c crossgrain -n __fish_use_subcommand -f -a ${name} -d ${quoted(summary)}`,
      ...(words.length === 0 ? [] : [`${here} -a ${quoted(words.join(" "))}`]),
      ...flags.map(({ name: flag, takes, words: values, help }) => {
        const value = !takes ? "" : values.length > 0 ? ` -x -a ${quoted(values.join(" "))}` : " -r";
        return `${here} -l ${flag.slice(2)}${value} -d ${quoted(help)}`;
      }),
    ];
  });
  return `# Completion of crossgrain for fish: crossgrain completion fish > ~/.config/fish/completions/crossgrain.fish\n${lines.join("\n")}\n`;
}
