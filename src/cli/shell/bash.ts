import type { Verb } from "./table.ts";

/** Completion for bash: commands, their options, words an option or argument takes, else files. */
export function bashCompletion(verbs: readonly Verb[]): string {
  const cases = verbs.map(({ name, flags, words }) => {
    const values = flags
      .filter((flag) => flag.words.length > 0)
      .map(
        (flag) =>
          `      ${flag.name}) COMPREPLY=($(compgen -W "${flag.words.join(" ")}" -- "$word")); return ;;`,
      );
    const names = flags.map((flag) => flag.name).join(" ");
    const first = words.length === 0 ? "" : words.join(" ");
    return [
      `    ${name})`,
      ...(values.length === 0 ? [] : ['      case "$before" in', ...values, "      esac"]),
      `      options="${names}" words="${first}" ;;`,
    ].join("\n");
  });
  return `# Completion of crossgrain for bash: source <(crossgrain completion bash)
_crossgrain() {
  local word=\${COMP_WORDS[COMP_CWORD]} before=\${COMP_WORDS[COMP_CWORD-1]} options="" words=""
  COMPREPLY=()
  if [ "$COMP_CWORD" -eq 1 ]; then
    COMPREPLY=($(compgen -W "${verbs.map(({ name }) => name).join(" ")} help --help --version" -- "$word"))
    return
  fi
  case "\${COMP_WORDS[1]}" in
    help) COMPREPLY=($(compgen -W "${verbs.map(({ name }) => name).join(" ")}" -- "$word")); return ;;
${cases.join("\n")}
  esac
  if [ "\${word#-}" != "$word" ]; then COMPREPLY=($(compgen -W "$options" -- "$word"))
  elif [ -n "$words" ] && [ "$COMP_CWORD" -eq 2 ]; then COMPREPLY=($(compgen -W "$words" -- "$word"))
  else COMPREPLY=($(compgen -f -- "$word")); fi
}
complete -o filenames -F _crossgrain crossgrain
`;
}
