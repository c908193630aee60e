import { useState } from "preact/hooks";
import {
  type PatternLine,
  patternOfText,
  setPatternLine,
  setPatternParts,
  setPatternWords,
} from "../../../edits/pattern-edits.ts";
import { PATTERN_PARTS, type PatternPart } from "../../../planning.ts";
import { words } from "../../words/index.ts";
import { edit } from "../actions.ts";
import { Field, FieldOfLines } from "../field.tsx";
import * as state from "../state.ts";
import { typedInto } from "../typed-into.ts";

const nameOf = (part: PatternPart): string => words.pattern.partNames[part] ?? part;

/** All parts in the order they stand in: one left out keeps the place it would have. */
function inPlace(parts: readonly PatternPart[]): PatternPart[] {
  const all = [...parts];
  for (const [i, part] of PATTERN_PARTS.entries())
    if (!all.includes(part)) all.splice(i === 0 ? 0 : all.indexOf(PATTERN_PARTS[i - 1]!) + 1, 0, part);
  return all;
}

/** The parts of the pattern; none moves when it is chosen or left out. */
function Parts() {
  const { parts } = patternOfText(state.text.value);
  const all = inPlace(parts);
  const take = (next: readonly PatternPart[], say: string) =>
    edit((text) => setPatternParts(text, next), say);
  return (
    <ul class="parts">
      {all.map((part) => {
        const within = parts.includes(part);
        const at = parts.indexOf(part);
        return (
          <li key={part}>
            <button
              type="button"
              class="act donebox"
              aria-pressed={within}
              onClick={() => {
                if (within && parts.length === 1) state.said.value = words.pattern.onePart;
                else if (within)
                  take(
                    parts.filter((one) => one !== part),
                    words.pattern.partOut(nameOf(part)),
                  );
                else
                  take(
                    all.filter((one) => one === part || parts.includes(one)),
                    words.pattern.partIn(nameOf(part)),
                  );
              }}
            >
              <span class="box" aria-hidden="true">
                {within ? "✓" : ""}
              </span>
              {nameOf(part)}
            </button>
            {at < 1 ? null : (
              <button
                type="button"
                class="act"
                aria-label={words.pattern.moveEarlier(nameOf(part))}
                onClick={() => {
                  const next = [...parts];
                  next.splice(at - 1, 2, part, parts[at - 1]!);
                  take(next, words.pattern.moveEarlier(nameOf(part)));
                }}
              >
                ↑
              </button>
            )}
          </li>
        );
      })}
    </ul>
  );
}

/** The author's own words at one place of the pattern, as they are typed. */
function OwnWords() {
  const [where, setWhere] = useState<"before" | "after">("before");
  const [part, setPart] = useState<PatternPart>("requirements");
  const pattern = patternOfText(state.text.value);
  const now = pattern.words(where, part);
  const said = (one: PatternPart) =>
    pattern.words("before", one) !== "" || pattern.words("after", one) !== "";
  return (
    <div class="ownwords">
      <div class="row">
        <select
          aria-label={words.pattern.ownWords}
          value={where}
          onChange={({ currentTarget }) => setWhere(currentTarget.value === "after" ? "after" : "before")}
        >
          <option value="before">{words.pattern.before}</option>
          <option value="after">{words.pattern.after}</option>
        </select>
        <select
          aria-label={words.pattern.patternParts}
          value={part}
          onChange={({ currentTarget }) =>
            setPart(PATTERN_PARTS.find((one) => one === currentTarget.value) ?? "requirements")
          }
        >
          {PATTERN_PARTS.map((one) => (
            <option key={one} value={one}>
              {nameOf(one)}
              {said(one) ? " ✎" : ""}
            </option>
          ))}
        </select>
      </div>
      <FieldOfLines
        key={`${where} ${part}`}
        aria-label={words.pattern.ownWordsAt(words.pattern[where], nameOf(part))}
        rows={5}
        value={now}
        onChange={({ currentTarget }) =>
          typedInto(
            currentTarget,
            now,
            (text, wish) => setPatternWords(text, where, part, wish),
            words.pattern.ownWordsAt(words.pattern[where], nameOf(part)),
            () => words.pattern.wrongWords,
          )
        }
      />
      <p class="quiet">{words.pattern.ownWordsHelp}</p>
    </div>
  );
}

/** What the pattern is made of: its parts, the author's lines and words, further sizes. All of it is in the quilt's text. */
export function PatternHand() {
  const pattern = patternOfText(state.text.value);
  return (
    <div class="patternhand">
      <details class="notes">
        <summary>{words.pattern.patternParts}</summary>
        <Parts />
      </details>
      <details class="notes">
        <summary>{words.pattern.authorLines}</summary>
        <div class="row fields">
          {(Object.keys(words.pattern.lines) as PatternLine[]).map((line) => (
            <label key={line}>
              <span>{words.pattern.lines[line]}</span>
              <Field
                value={pattern.line(line)}
                placeholder={words.pattern.lineExamples[line]}
                onChange={({ currentTarget }) =>
                  typedInto(
                    currentTarget,
                    pattern.line(line),
                    (text, wish) => setPatternLine(text, line, wish),
                    words.pattern.lines[line],
                    words.pattern.wrongLine,
                  )
                }
              />
            </label>
          ))}
        </div>
      </details>
      <details class="notes">
        <summary>{words.pattern.ownWords}</summary>
        <OwnWords />
      </details>
    </div>
  );
}
