import type { Flag, Verb } from "./table.ts";

/** Inside single quotes, and inside the brackets of a description. */
const quoted = (text: string) => text.replaceAll("'", "'\\''").replace(/[[\]:\\]/g, "\\$&");

function spec({ name, takes, words, help }: Flag): string {
  const value = !takes ? "" : words.length > 0 ? `:value:(${words.join(" ")})` : ":value:_files";
  return `'${name}[${quoted(help)}]${value}'`;
}

/** Completion for zsh. */
export function zshCompletion(verbs: readonly Verb[]): string {
  const list = verbs.map(({ name, summary }) => `    '${name}:${quoted(summary)}'`);
  const cases = verbs.map(({ name, flags, words }) => {
    const first = words.length > 0 ? [`'1:word:(${words.join(" ")})'`] : [];
    const all = [...flags.map(spec), ...first, "'*:file:_files'"];
    return `    ${name}) _arguments \\\n      ${all.join(" \\\n      ")} ;;`;
  });
  return `#compdef crossgrain
# Completion of crossgrain for zsh: crossgrain completion zsh > a folder of $fpath, as _crossgrain
_crossgrain() {
  local -a verbs
  verbs=(
${list.join("\n")}
  )
  if (( CURRENT == 2 )); then
    _describe 'command' verbs
    return
  fi
  local verb=$words[2]
  shift words
  (( CURRENT-- ))
  case $verb in
${cases.join("\n")}
  esac
}
compdef _crossgrain crossgrain
`;
}
